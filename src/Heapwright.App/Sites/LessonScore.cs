namespace Heapwright.App.Sites;

/// <summary>What a heap taught of one parameter, on the scale on which its prior is standard normal.</summary>
/// <param name="Mean">Standard deviations from the usual value.</param>
/// <param name="Deviation">Standard deviation; 1 where nothing was learned.</param>
public sealed record LessonScore(double Mean, double Deviation);
