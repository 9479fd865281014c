using Heapwright.Core.Materials;
using Heapwright.Core.Materials.Stock;

namespace Heapwright.Core.Tests.Materials.Stock;

public class MayItGoInTests
{
    [Fact]
    public void Leaves_May_NeedNoReason()
    {
        var admission = MayItGoIn.Judge(With("may"));
        Assert.Equal(AdmissionAdvice.May, admission.Advice);
        Assert.Empty(admission.Reasons);
    }

    [Theory]
    [InlineData("never", "materials.never", AdmissionAdvice.Never)]
    [InlineData("not_advised", "materials.not_advised", AdmissionAdvice.NotAdvised)]
    [InlineData("with_care", "materials.with_care", AdmissionAdvice.WithCare)]
    public void Judge_Advice_ComesWithItsReasons(
        string advice,
        string code,
        AdmissionAdvice expected
    )
    {
        var admission = MayItGoIn.Judge(With(advice, "treated_wood"));
        Assert.Equal(expected, admission.Advice);
        Assert.Equal(code, admission.Reasons[0].Code);
        Assert.Contains(admission.Reasons, r => r.Code is "cautions.treated_wood.why");
    }

    [Fact]
    public void Never_DefersToLocalRules() =>
        Assert.Contains(
            MayItGoIn.Judge(With("never", "invasive")).Reasons,
            r => r.Code is "materials.local_rules"
        );

    [Fact]
    public void SickPlant_ColdHeap_NeedsCare()
    {
        var sick = With("may", "plant_disease");
        Assert.Equal(AdmissionAdvice.May, MayItGoIn.Judge(sick).Advice);
        var cold = MayItGoIn.Judge(sick, getsHot: false);
        Assert.Equal(AdmissionAdvice.WithCare, cold.Advice);
        Assert.Contains(cold.Reasons, r => r.Code is "materials.needs_heat");
    }

    [Fact]
    public void Judge_UnknownAdvice_IsRefused() =>
        Assert.Throws<ArgumentException>(() => MayItGoIn.Judge(With("perhaps")));

    private static Material With(string advice, params string[] cautions) =>
        Stuff.Of() with
        {
            Advice = advice,
            Cautions = [.. cautions],
        };
}
