using Heapwright.Core.Quantities;
using Microsoft.Extensions.Logging;

namespace Heapwright.Architecture.WrongSample.Numerics;

public static class KnowsTheDomain
{
    public static double Typical(Spread value) => value.Typical;
}

public static class UsesAPackage
{
    public static double Kilograms(double value) => UnitsNet.Mass.FromKilograms(value).Kilograms;
}

public static class ReadsAFile
{
    public static string Text(string path) => File.ReadAllText(path);
}

public static class CallsTheNetwork
{
    public static async Task<string> Page(Uri address)
    {
        using var client = new HttpClient();
        return await client.GetStringAsync(address);
    }
}

public static class WritesALog
{
    public static void Tell(ILogger log) => log.LogInformation("told");
}

public static class DrawsWithoutASeed
{
    public static double Next() => Random.Shared.NextDouble();
}
