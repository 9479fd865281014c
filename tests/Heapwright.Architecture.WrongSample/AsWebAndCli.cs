using Heapwright.Numerics.Sampling;
using Microsoft.EntityFrameworkCore;

namespace Heapwright.Architecture.WrongSample.Web
{
    public static class KnowsTheStorage
    {
        public static object Rows() => new Heapwright.Storage.Sqlite.StandInContext();
    }

    public static class KnowsTheSolvers
    {
        public static QuasiRandomSet Points() => new(64, 1);
    }

    public static class KnowsTheDatabase
    {
        public static int Save(DbContext context) => context.SaveChanges();
    }
}

namespace Heapwright.Architecture.WrongSample.Cli
{
    public static class KnowsTheStorage
    {
        public static object Rows() => new Heapwright.Storage.Sqlite.StandInContext();
    }

    public static class KnowsTheSolvers
    {
        public static QuasiRandomSet Points() => new(64, 1);
    }

    public static class KnowsTheDatabase
    {
        public static int Save(DbContext context) => context.SaveChanges();
    }
}
