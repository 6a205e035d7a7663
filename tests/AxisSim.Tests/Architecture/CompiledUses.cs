using System.Reflection;
using System.Reflection.Emit;

namespace AxisSim.Tests.Architecture;

/// <summary>What a compiled type leans on: its base and interfaces, its fields and signatures, and what its methods name in their bodies.</summary>
internal static class CompiledUses
{
    private const BindingFlags All = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.Instance | BindingFlags.DeclaredOnly;

    private static readonly Dictionary<int, OpCode> s_codes = typeof(OpCodes).GetFields().Select(field => (OpCode)field.GetValue(null)!).ToDictionary(code => code.Value & 0xFFFF);

    /// <summary>Every type that one names; arrays and generic types by their parts.</summary>
    public static IEnumerable<Type> Of(Type type)
    {
        IEnumerable<Type?> named =
        [
            type.BaseType,
            .. type.GetInterfaces(),
            .. type.GetGenericArguments().SelectMany(Constraints),
            .. type.GetFields(All).Select(field => field.FieldType),
            .. type.GetMethods(All).SelectMany(OfMethod),
            .. type.GetConstructors(All).SelectMany(OfMethod),
        ];
        return named.OfType<Type>().SelectMany(Parts).Distinct();
    }

    private static IEnumerable<Type?> OfMethod(MethodBase method)
    {
        Type[] own = method.IsGenericMethodDefinition ? method.GetGenericArguments() : [];
        return
        [
            (method as MethodInfo)?.ReturnType,
            .. method.GetParameters().Select(parameter => parameter.ParameterType),
            .. own.SelectMany(Constraints),
            .. method.GetMethodBody() is { } body ? body.LocalVariables.Select(local => local.LocalType).Concat(Named(method, body.GetILAsByteArray()!, own)) : [],
        ];
    }

    private static IEnumerable<Type> Constraints(Type argument) => argument.IsGenericParameter ? argument.GetGenericParameterConstraints() : [];

    /// <summary>Types, and owners of fields and methods, that the instructions name.</summary>
    private static IEnumerable<Type?> Named(MethodBase method, byte[] il, Type[] own)
    {
        Type[] outer = method.DeclaringType!.GetGenericArguments();
        for (int at = 0; at < il.Length;)
        {
            int value = il[at++];
            OpCode code = s_codes[value == 0xFE ? 0xFE00 | il[at++] : value];
            if (code.OperandType is OperandType.InlineField or OperandType.InlineMethod or OperandType.InlineTok or OperandType.InlineType)
            {
                MemberInfo member = method.Module.ResolveMember(BitConverter.ToInt32(il, at), outer, own)!;
                yield return member as Type ?? member.DeclaringType;
                foreach (Type argument in member is MethodInfo { IsGenericMethod: true } generic ? generic.GetGenericArguments() : [])
                {
                    yield return argument;
                }
            }

            at += code.OperandType switch
            {
                OperandType.InlineNone => 0,
                OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar => 1,
                OperandType.InlineVar => 2,
                OperandType.InlineI8 or OperandType.InlineR => 8,
                OperandType.InlineSwitch => 4 + (4 * BitConverter.ToInt32(il, at)),
                _ => 4,
            };
        }
    }

    private static IEnumerable<Type> Parts(Type type) => type.HasElementType
        ? Parts(type.GetElementType()!)
        : type.IsConstructedGenericType ? type.GetGenericArguments().SelectMany(Parts).Append(type.GetGenericTypeDefinition()) : [type];
}
