namespace PartsSignal.SampleShop.Simulation;

/// <summary>Hears of what happens in the shop, in the order of time.</summary>
internal interface IShopLog
{
    /// <summary>A call has come in; the job goes on changing.</summary>
    void Opened(Job job);

    /// <summary>A day has passed.</summary>
    void DayDone(int day);

    /// <summary>Nothing will change about the job that the last day can show.</summary>
    void Final(Job job);

    void Ordered(OrderLine line);

    /// <summary>The last day has passed.</summary>
    void Closing(Area area);
}

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
