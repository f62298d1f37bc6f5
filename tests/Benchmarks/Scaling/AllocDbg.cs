#pragma warning disable
using System.Diagnostics.Tracing;
namespace PartsSignal.Benchmarks.Scaling;
internal sealed class AllocDbg : EventListener
{
    readonly System.Collections.Concurrent.ConcurrentDictionary<string,(long n,long b)> _t = new();
    protected override void OnEventSourceCreated(EventSource s) { if (s.Name == "Microsoft-Windows-DotNETRuntime") EnableEvents(s, EventLevel.Verbose, (EventKeywords)1); }
    protected override void OnEventWritten(EventWrittenEventArgs e)
    {
        if (e.EventName is string n && n.StartsWith("GCAllocationTick"))
        {
            int i = e.PayloadNames.IndexOf("TypeName"), k = e.PayloadNames.IndexOf("AllocationKind"), a = e.PayloadNames.IndexOf("AllocationAmount64"), z = e.PayloadNames.IndexOf("ObjectSize");
            string st = Convert.ToInt32(e.Payload[k])==1 ? string.Join(" < ", new System.Diagnostics.StackTrace(false).GetFrames().Select(f=>f.GetMethod()?.DeclaringType?.Name+"."+f.GetMethod()?.Name).Where(x=>x!=null && !x.Contains("AllocDbg") && !x.Contains("Event")).Take(7)) : "";
            _t.AddOrUpdate((Convert.ToInt32(e.Payload[k])==1?"LOH ":"soh ")+e.Payload[i]+" "+st, (1, (long)(ulong)e.Payload[a]), (_, o) => (o.n+1, o.b + (long)(ulong)e.Payload[a]));
        }
    }
    public void Dump() { foreach (var x in _t.OrderByDescending(x => x.Value.b).Take(40)) Console.Error.WriteLine($"{x.Value.b/1048576} MB {x.Value.n} {x.Key}"); }
}
