namespace PartsSignal.SampleShop.Simulation;

/// <summary>Passes what happens on to several listeners.</summary>
internal sealed class ShopLogs(params IReadOnlyList<IShopLog> logs) : IShopLog
{
    public void Opened(Job job)
    {
        foreach (IShopLog log in logs)
        {
            log.Opened(job);
        }
    }

    public void DayDone(int day)
    {
        foreach (IShopLog log in logs)
        {
            log.DayDone(day);
        }
    }

    public void Final(Job job)
    {
        foreach (IShopLog log in logs)
        {
            log.Final(job);
        }
    }

    public void Ordered(OrderLine line)
    {
        foreach (IShopLog log in logs)
        {
            log.Ordered(line);
        }
    }

    public void Closing(Area area)
    {
        foreach (IShopLog log in logs)
        {
            log.Closing(area);
        }
    }
}
