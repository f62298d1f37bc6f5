namespace PartsSignal.SampleShop.Simulation;

/// <summary>A household, or one house of the contract customer.</summary>
/// <param name="Number">Number within the area.</param>
/// <param name="Name">Name; invented.</param>
/// <param name="Phone">From the ranges kept free for fiction.</param>
/// <param name="Address">Invented street and place.</param>
/// <param name="Email">At example.com or empty.</param>
/// <param name="Van">Van that serves the street, from 0.</param>
/// <param name="Loyalty">Chance that a call comes to this shop and not to another.</param>
/// <param name="IsContract">One of the guest houses whose appliances are in the register.</param>
internal sealed record Customer(
    int Number, string Name, string Phone, string Address, string Email, int Van, double Loyalty, bool IsContract)
{
    public const double ContractPace = 4;
}
