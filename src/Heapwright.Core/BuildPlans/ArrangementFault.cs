namespace Heapwright.Core.BuildPlans;

/// <summary>What is wrong with an arrangement, worst first.</summary>
internal enum ArrangementFault
{
    None,
    GrassTooThick,
    GreenTooThick,
    BrownTooThick,
    ScrapsOffMiddle,
}
