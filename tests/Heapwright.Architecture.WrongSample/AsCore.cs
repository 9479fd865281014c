using System.Diagnostics;
using System.Net.Sockets;
using Heapwright.App.Library;
using Microsoft.AspNetCore.Http;
using Microsoft.EntityFrameworkCore;

namespace Heapwright.Architecture.WrongSample.Core
{
    public static class KnowsTheApp
    {
        public static string Data() => DataFiles.Text("materials.csv");
    }

    public static class UsesAnotherPackage
    {
        public static NodaTime.Instant Start() => NodaTime.Instant.MinValue;
    }

    public sealed class KnowsTheDatabase : DbContext;

    public static class KnowsTheWeb
    {
        public static string Path(HttpContext context) => context.Request.Path;
    }

    public interface IKnowsGrains : Orleans.IGrain;

    public static class ReadsAFile
    {
        public static bool Exists(string path) => File.Exists(path);
    }

    public static class CallsTheNetwork
    {
        public static Socket Open() => new(SocketType.Stream, ProtocolType.Tcp);
    }

    public static class LooksAtTheClock
    {
        public static DateTime Now() => DateTime.UtcNow;
    }

    public static class LooksAtTheClockInALambda
    {
        public static Func<long> Now() => () => Stopwatch.GetTimestamp();
    }

    public static class LooksAtItsSurroundings
    {
        public static string? User() => Environment.GetEnvironmentVariable("USER");
    }

    public static class KeepsState
    {
        public static int Count { get; set; }
    }

    public static class DrawsWithoutASeed
    {
        public static Guid Next() => Guid.NewGuid();
    }

    public static class WithoutADocstring;

    public static class HeapManager;

    public static class MixHelper;

    public static class RecipeService;
}

namespace Heapwright.Architecture.WrongSample.Core.Materials
{
    public static class LooksRight
    {
        public static string Name() => nameof(Recipes.ToTheRight) + new Recipes.ToTheRight();
    }
}

namespace Heapwright.Architecture.WrongSample.Core.Recipes
{
    public sealed class ToTheRight;
}

namespace Heapwright.Architecture.WrongSample.Core.Elsewhere
{
    public sealed class HasNoPlaceInTheChain;
}
