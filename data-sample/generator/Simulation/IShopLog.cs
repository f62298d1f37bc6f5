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
