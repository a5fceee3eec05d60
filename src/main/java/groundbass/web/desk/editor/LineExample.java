package groundbass.web.desk.editor;

/** A line that shows how lines are written. */
final class LineExample {
    static final String TEXT = """
            key     A dorian
            meter   4/4
            tempo   96
            strings E A D G
            style   finger

            bar 1 over Am7
            1    E5
            1&   E5, E8
            2    A5, Ax
            2&   A7 short
            3    E8 for 2 slap, D5 pop
            4    rest

            bar 2 = bar 1 counts 1-2
            3-4  D4+G5 pluck
            repeat end x2
            """;

    private LineExample() {}
}
