using Mono.Cecil;

namespace Heapwright.Architecture;

/// <summary>One type under judgement, with what it refers to.</summary>
/// <param name="Type">The type as compiled; a closure or an iterator is judged under the type it was written in.</param>
/// <param name="Inside">The namespace within its place: <c>Materials.Searching</c> for Heapwright.Core.Materials.Searching.</param>
/// <param name="Uses">What it refers to.</param>
/// <param name="Documented">The documentation ids of the file beside the assembly.</param>
internal sealed record Subject(
    TypeDefinition Type,
    string Inside,
    TypeUses Uses,
    IReadOnlySet<string> Documented
)
{
    /// <summary>The type a person wrote: the outermost one around it.</summary>
    public TypeDefinition Written
    {
        get
        {
            var type = Type;
            while (type.DeclaringType is not null)
            {
                type = type.DeclaringType;
            }

            return type;
        }
    }

    /// <summary>Whether the compiler made the type.</summary>
    public bool IsCompilerMade => Type.Name.Contains('<', StringComparison.Ordinal);
}
