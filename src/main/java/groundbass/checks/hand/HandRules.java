package groundbass.checks.hand;

import groundbass.checks.finding.Rule;
import java.util.List;

/** The rules of this room. */
public final class HandRules {
    private static final List<Rule> ALL = List.of(
            new HammersRise(),
            new PullsFall(),
            new SlidesMove(),
            new LegatoFollows(),
            new LegatoFades(),
            new HandSpans(),
            new FingersFit(),
            new FingersHop(),
            new ShiftsTakeTime(),
            new SpeedsAreUsual(),
            new StringSkips(),
            new StrokesAtOnce(),
            new ThumbComesBack(),
            new PopsSuitStrings(),
            new RingsSound(),
            new OpenStringsStay(),
            new DeadNotesStayDead(),
            new BendsStaySmall(),
            new HarmonicsLieOnNodes(),
            new LowChordsAreOpen(),
            new EasierElsewhere());

    private HandRules() {}

    public static List<Rule> all() {
        return ALL;
    }
}
