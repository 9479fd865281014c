// Types of places that hold none yet, so that the sample can refer to them.
namespace Heapwright.Storage
{
    public sealed class StandInRow;
}

namespace Heapwright.Storage.Sqlite
{
    public sealed class StandInContext;
}

namespace Orleans
{
    public interface IGrain;
}
