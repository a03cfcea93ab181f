using System.Reflection;
using System.Runtime.CompilerServices;
using System.Xml.Linq;
using FluentAssertions;
using TechLint.Ultrasonics.Quantities;
using TechLint.Ultrasonics.Studies;
using Xunit;

namespace TechLint.Tests.Unit.Architecture;

/// <summary>What the physics shows to the rest of the house.</summary>
public sealed class PublicPhysicsTests
{
    private const BindingFlags Declared = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    private static readonly Type[] Bare = [typeof(double), typeof(float), typeof(decimal)];

    private static IEnumerable<Type> Shown => typeof(Study).Assembly.GetExportedTypes();

    [Fact]
    public void No_bare_number_crosses_the_border()
    {
        var places =
            from type in Shown
            where type.Namespace != typeof(Length).Namespace
            from place in PlacesOf(type)
            where HoldsBareNumber(place.Type)
            select place.Name;
        places.ToArray().Should().BeEmpty();
    }

    [Fact]
    public void Every_public_type_says_what_it_is()
    {
        var notes = XDocument.Load(Path.Combine(AppContext.BaseDirectory, "TechLint.Ultrasonics.xml"));
        var said = notes.Descendants("member").Where(member => member.Element("summary")?.Value.Trim().Length > 0)
            .Select(member => (string)member.Attribute("name")!).ToHashSet(StringComparer.Ordinal);
        Shown.Select(type => "T:" + type.FullName!.Replace('+', '.')).Where(name => !said.Contains(name)).ToArray().Should().BeEmpty();
    }

    private static IEnumerable<(string Name, Type Type)> PlacesOf(Type type)
    {
        foreach (var field in type.GetFields(Declared)) yield return ($"{type.FullName}.{field.Name}", field.FieldType);
        foreach (var property in type.GetProperties(Declared)) yield return ($"{type.FullName}.{property.Name}", property.PropertyType);
        foreach (var maker in type.GetConstructors(Declared))
        {
            foreach (var parameter in maker.GetParameters()) yield return ($"{type.FullName}({parameter.Name})", parameter.ParameterType);
        }

        foreach (var method in type.GetMethods(Declared).Where(method => !method.IsSpecialName && !method.IsDefined(typeof(CompilerGeneratedAttribute))))
        {
            yield return ($"{type.FullName}.{method.Name}", method.ReturnType);
            foreach (var parameter in method.GetParameters()) yield return ($"{type.FullName}.{method.Name}({parameter.Name})", parameter.ParameterType);
        }
    }

    private static bool HoldsBareNumber(Type type) =>
        Bare.Contains(type)
        || (type.HasElementType && HoldsBareNumber(type.GetElementType()!))
        || (type.IsGenericType && type.GetGenericArguments().Any(HoldsBareNumber));
}
