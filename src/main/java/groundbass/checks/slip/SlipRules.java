package groundbass.checks.slip;

import groundbass.checks.finding.Rule;
import java.util.List;

/** The rules of this room. */
public final class SlipRules {
    private static final List<Rule> ALL = List.of(
            new NotesBelong(),
            new KeyIsSaid(),
            new ChordsFitTheirNotes(),
            new SlipsStandOut(),
            new FiguresKeepTheirShape(),
            new RhythmsAgree(),
            new RepeatsBalance());

    private SlipRules() {}

    public static List<Rule> all() {
        return ALL;
    }
}
