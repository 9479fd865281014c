using Heapwright.Numerics.Sampling;
using Microsoft.AspNetCore.Components;
using Microsoft.EntityFrameworkCore;
using UnitsNet;

namespace Heapwright.Architecture.WrongSample.App
{
    public static class KnowsTheStorage
    {
        public static object Rows() => new Heapwright.Storage.StandInRow();
    }

    public static class KnowsTheDatabase
    {
        public static int Save(DbContext context) => context.SaveChanges();
    }

    public sealed class KnowsRazor : ComponentBase;

    public interface IKnowsGrains : Orleans.IGrain;

    public static class WritesAFile
    {
        public static void Write(string path) => File.WriteAllText(path, "");
    }

    public static class TalksToTheConsole
    {
        public static void Tell() => Console.WriteLine("told");
    }

    public static class DoesArithmetic
    {
        public static Mass Sum(Mass a, Mass b) => a + b;
    }

    public static class LooksAtTheClock
    {
        public static DateTimeOffset Now() => DateTimeOffset.Now;
    }
}

namespace Heapwright.Architecture.WrongSample.Storage
{
    public static class KnowsTheSolvers
    {
        public static QuasiRandomSet Points() => new(64, 1);
    }

    public static class KnowsTheWeb
    {
        public static string Render(RenderFragment part) => part.Method.Name;
    }

    public static class KnowsOneDatabase
    {
        public static object Rows() => new Heapwright.Storage.Sqlite.StandInContext();
    }
}

namespace Heapwright.Architecture.WrongSample.Storage.Sqlite
{
    public static class KnowsTheDomain
    {
        public static object Stage() => Heapwright.Core.Quantities.Spread.Exact(1);
    }
}
