package groundbass.checks;

import groundbass.score.Copy;
import groundbass.score.Line;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** Everything that a teacher would remark on in a line. */
public final class Checks {
    private static final Comparator<Finding> ORDER = Comparator.comparing(Finding::position)
            .thenComparing(Finding::severity)
            .thenComparing(Finding::code)
            .thenComparing(finding -> finding.passage().to());

    /** A new rule is a file and a line here. */
    private static final List<Rule> RULES = List.of(
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
            new NotesBelong(),
            new KeyIsSaid(),
            new ChordsFitTheirNotes(),
            new SlipsStandOut(),
            new FiguresKeepTheirShape(),
            new RhythmsAgree(),
            new RepeatsBalance(),
            new EasierElsewhere());

    private Checks() {}

    /**
     * The findings of a line in its own order, the graver first. What is said of a bar that is written as a copy was
     * said of the bar it copies.
     */
    public static List<Finding> of(Line line) {
        var evidence = new Evidence(line);
        var all = RULES.stream()
                .flatMap(rule -> rule.findings(evidence))
                .filter(finding -> isFirstSaid(finding, line))
                .sorted(ORDER)
                .toList();
        return OneCause.of(all);
    }

    private static boolean isFirstSaid(Finding finding, Line line) {
        return Stream.of(finding.position().bar(), lastBar(finding))
                .map(line::bar)
                .anyMatch(bar -> bar.copy().filter(Copy::isWhole).isEmpty());
    }

    private static int lastBar(Finding finding) {
        var to = finding.passage().to();
        return to.at().isZero() ? to.bar() - 1 : to.bar();
    }
}
