using Mono.Cecil;
using Mono.Cecil.Cil;

namespace Heapwright.Architecture;

/// <summary>Everything that the code of one type refers to, its nested and compiler-made types not included.</summary>
internal sealed class TypeUses
{
    private readonly HashSet<TypeReference> types = [];
    private readonly HashSet<MethodReference> methods = [];

    private TypeUses() { }

    /// <summary>The types referred to.</summary>
    public IEnumerable<TypeReference> Types => types;

    /// <summary>The methods called, property getters among them.</summary>
    public IEnumerable<MethodReference> Methods => methods;

    /// <summary>Reads a type: its bases, signatures, attributes and every instruction.</summary>
    /// <param name="type">The type.</param>
    public static TypeUses Of(TypeDefinition type)
    {
        var uses = new TypeUses();
        uses.Add(type.BaseType);
        foreach (var part in type.Interfaces)
        {
            uses.Add(part.InterfaceType);
        }

        uses.AddAttributes(type);
        uses.AddParameters(type);
        foreach (var field in type.Fields)
        {
            uses.Add(field.FieldType);
            uses.AddAttributes(field);
        }

        foreach (var property in type.Properties)
        {
            uses.AddAttributes(property);
        }

        foreach (var method in type.Methods)
        {
            uses.Add(method);
        }

        return uses;
    }

    private void Add(MethodDefinition method)
    {
        AddSignature(method);
        AddAttributes(method);
        AddParameters(method);
        if (!method.HasBody)
        {
            return;
        }

        foreach (var variable in method.Body.Variables)
        {
            Add(variable.VariableType);
        }

        foreach (var handler in method.Body.ExceptionHandlers)
        {
            Add(handler.CatchType);
        }

        foreach (var instruction in method.Body.Instructions)
        {
            Add(instruction);
        }
    }

    private void Add(Instruction instruction)
    {
        switch (instruction.Operand)
        {
            case MethodReference called:
                methods.Add(called);
                Add(called.DeclaringType);
                AddSignature(called);
                if (called is GenericInstanceMethod generic)
                {
                    AddAll(generic.GenericArguments);
                }

                break;
            case FieldReference field:
                Add(field.DeclaringType);
                Add(field.FieldType);
                break;
            case TypeReference type:
                Add(type);
                break;
        }
    }

    private void AddSignature(MethodReference method)
    {
        Add(method.ReturnType);
        AddAll(method.Parameters.Select(p => p.ParameterType));
    }

    private void AddParameters(IGenericParameterProvider provider) =>
        AddAll(
            provider.GenericParameters.SelectMany(p => p.Constraints.Select(c => c.ConstraintType))
        );

    private void AddAttributes(ICustomAttributeProvider provider) =>
        AddAll(provider.CustomAttributes.Select(a => a.AttributeType));

    private void AddAll(IEnumerable<TypeReference> many)
    {
        foreach (var type in many)
        {
            Add(type);
        }
    }

    private void Add(TypeReference? type)
    {
        switch (type)
        {
            case null or GenericParameter:
                return;
            case GenericInstanceType generic:
                AddAll(generic.GenericArguments);
                Add(generic.ElementType);
                return;
            case TypeSpecification wrapped:
                Add(wrapped.ElementType);
                return;
            default:
                types.Add(type);
                Add(type.DeclaringType);
                return;
        }
    }
}
