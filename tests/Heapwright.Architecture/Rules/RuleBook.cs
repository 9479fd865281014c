using static Heapwright.Architecture.Rules.Shapes;
using static Heapwright.Architecture.Rules.Uses;

namespace Heapwright.Architecture.Rules;

/// <summary>The directions and limits of the architecture; beside each the types of the sample that break it.</summary>
internal static class RuleBook
{
    private static readonly string[] Database =
    [
        "Microsoft.EntityFrameworkCore",
        "Microsoft.Data",
        "System.Data",
        "Npgsql",
    ];

    /// <summary>Every rule.</summary>
    public static readonly Rule[] All =
    [
        new("numerics_knows_no_other_place", "Numerics", OursOutside("Numerics"), "KnowsTheDomain"),
        new("numerics_uses_no_package", "Numerics", PackagesBut(), "UsesAPackage", "WritesALog"),
        new("numerics_touches_no_files", "Numerics", Namespaces("System.IO"), "ReadsAFile"),
        new("numerics_calls_no_network", "Numerics", Namespaces("System.Net"), "CallsTheNetwork"),
        new(
            "numerics_writes_no_log",
            "Numerics",
            s => Namespaces("Microsoft.Extensions.Logging")(s).Concat(Surroundings(s)),
            "WritesALog"
        ),
        new("numerics_draws_from_a_seed", "Numerics", UnseededRandomness, "DrawsWithoutASeed"),
        new("numerics_has_docstrings", "Numerics", NoDocstring, "KnowsTheDomain"),
        new("core_knows_numerics_only", "Core", OursOutside("Core", "Numerics"), "KnowsTheApp"),
        new("core_uses_one_package", "Core", PackagesBut("UnitsNet"), "UsesAnotherPackage"),
        new("core_knows_no_database", "Core", Namespaces(Database), "KnowsTheDatabase"),
        new("core_knows_no_web", "Core", Namespaces("Microsoft.AspNetCore"), "KnowsTheWeb"),
        new("core_knows_no_grains", "Core", Namespaces("Orleans"), "IKnowsGrains"),
        new("core_touches_no_files", "Core", Files, "ReadsAFile"),
        new("core_calls_no_network", "Core", Namespaces("System.Net"), "CallsTheNetwork"),
        new("core_reads_no_clock", "Core", Clock, "LooksAtTheClock", "LooksAtTheClockInALambda"),
        new("core_leaves_its_surroundings", "Core", Surroundings, "LooksAtItsSurroundings"),
        new("core_keeps_no_state", "Core", GlobalState, "KeepsState"),
        new("core_draws_from_a_seed", "Core", UnseededRandomness, "DrawsWithoutASeed"),
        new("core_has_docstrings", "Core", NoDocstring, "WithoutADocstring"),
        new("core_stages_have_a_place", "Core", OutsideTheChain, "HasNoPlaceInTheChain"),
        new("core_stages_look_left", "Core", LooksRight, "LooksRight"),
        new("app_knows_core", "App", OursOutside("App", "Core", "Numerics"), "KnowsTheStorage"),
        new("app_knows_no_database", "App", Namespaces(Database), "KnowsTheDatabase"),
        new("app_knows_no_pages", "App", Namespaces("Microsoft.AspNetCore"), "KnowsRazor"),
        new("app_knows_no_grains", "App", Namespaces("Orleans"), "IKnowsGrains"),
        new("app_touches_no_files", "App", Files, "WritesAFile"),
        new("app_leaves_its_surroundings", "App", Surroundings, "TalksToTheConsole"),
        new("app_does_no_arithmetic", "App", Arithmetic, "DoesArithmetic"),
        new("app_is_handed_the_clock", "App", ClockButHandedIn, "LooksAtTheClock"),
        new(
            "storage_knows_app",
            "Storage",
            OursOutside("Storage", "App", "Core"),
            "KnowsTheSolvers",
            "KnowsOneDatabase"
        ),
        new("storage_knows_no_web", "Storage", Namespaces("Microsoft.AspNetCore"), "KnowsTheWeb"),
        new(
            "sqlite_knows_storage",
            "Storage.Sqlite",
            OursOutside("Storage.Sqlite", "Storage", "App"),
            "KnowsTheDomain"
        ),
        .. Fronts("Web"),
        .. Fronts("Cli"),
        .. Places.All.Select(place => new Rule(
            place.Replace('.', '_') + "_has_telling_names",
            place,
            VagueName,
            place == "Core" ? ["HeapManager", "MixHelper", "RecipeService"] : []
        )),
    ];

    private static IEnumerable<Rule> Fronts(string place)
    {
        var name = place == "Web" ? "web" : "cli";
        yield return new Rule(
            name + "_sees_storage_in_program_only",
            place,
            ButInProgram(OursOutside(place, "App", "Core", "Numerics")),
            "KnowsTheStorage"
        );
        yield return new Rule(
            name + "_calls_no_solver",
            place,
            OursOutside([place, .. Places.All.Where(p => p != "Numerics")]),
            "KnowsTheSolvers"
        );
        yield return new Rule(
            name + "_knows_no_database",
            place,
            ButInProgram(Namespaces(Database)),
            "KnowsTheDatabase"
        );
    }
}
