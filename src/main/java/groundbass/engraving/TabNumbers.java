package groundbass.engraving;

import groundbass.engraving.Shape.Run;

/**
 * Frets and crosses on their strings, centred under the heads; in parentheses where a held note enters a system
 * (rule: tab-tied-note).
 */
final class TabNumbers implements Concern {
    @Override
    public void draw(Sketch sketch) {
        for (var spot : sketch.spots()) {
            for (var head : spot.cell().heads()) {
                if (Labels.isShown(head.head())) {
                    draw(sketch, spot, head);
                } else if (Labels.isEntering(spot, head.head())) {
                    String text = Labels.printed(spot, head.head());
                    double y = Measures.stringY(head.head().note().string());
                    sketch.tab().add(Kind.FRET, spot.owner(), number(text, Labels.size(text), spot.middle(), y));
                }
            }
        }
    }

    private static void draw(Sketch sketch, Spot spot, HeadPlace head) {
        NoteMarks.use(sketch, head.head());
        String text = Labels.text(head.head());
        double y = Measures.stringY(head.head().note().string());
        sketch.tab().add(Kind.FRET, spot.owner(), number(text, Labels.size(text), spot.middle(), y));
        head.head()
                .note()
                .arrival()
                .filter(arrival -> arrival.graceFret().isPresent())
                .ifPresent(arrival -> {
                    String grace = Labels.graceText(arrival);
                    double size = Labels.size(grace) * Labels.GRACE;
                    double x = spot.middle()
                            - Labels.width(text) / 2
                            - Labels.graceGap(arrival)
                            - Labels.graceWidth(arrival) / 2;
                    sketch.tab().add(Kind.FRET, spot.owner(), number(grace, size, x, y));
                });
    }

    /** Centred on a string by the height of its figures. */
    static Run number(String text, double size, double x, double string) {
        double height = -TextFont.of(Face.MEDIUM).box("0").top() * size;
        return new Run(text, Face.MEDIUM, size, new Point(x, string + height / 2), Align.MIDDLE);
    }
}
