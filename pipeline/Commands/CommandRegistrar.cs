using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Builds commands: a constructor argument is either registered or built the same way.</summary>
internal sealed class CommandRegistrar : ITypeRegistrar, ITypeResolver
{
    private readonly Dictionary<Type, Func<object?>> _known = [];

    public ITypeResolver Build() => this;

    public void Register(Type service, Type implementation) => _known[service] = () => Make(implementation);

    public void RegisterInstance(Type service, object implementation) => _known[service] = () => implementation;

    public void RegisterLazy(Type service, Func<object> factory) => _known[service] = factory;

    public object? Resolve(Type? type)
    {
        if (type is null)
        {
            return null;
        }

        if (_known.TryGetValue(type, out Func<object?>? make))
        {
            return make();
        }

        if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IEnumerable<>))
        {
            return AllOf(type.GetGenericArguments()[0]);
        }

        return type.IsAbstract || type.IsInterface ? null : Make(type);
    }

    private Array AllOf(Type element)
    {
        object?[] found = _known.TryGetValue(element, out Func<object?>? make) ? [make()] : [];
        var array = Array.CreateInstance(element, found.Length);
        found.CopyTo(array, 0);
        return array;
    }

    private object? Make(Type type)
    {
        var constructor = type.GetConstructors().OrderByDescending(c => c.GetParameters().Length).FirstOrDefault();
        return constructor?.Invoke([.. constructor.GetParameters().Select(p => Resolve(p.ParameterType))]);
    }
}
