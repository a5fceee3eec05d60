package groundbass.script.grammar;

/** A unit and where it stands in the script: offsets of its first character and after its last. */
public record Read(Constituent unit, int from, int to) {
    public boolean is(Constituent.Tie tie) {
        return unit instanceof Constituent.Small small && small.tie() == tie;
    }

    public boolean is(Class<? extends Constituent> kind) {
        return kind.isInstance(unit);
    }

    /** Whether it names a time within a bar. */
    public boolean isTime() {
        return is(Constituent.Beats.class)
                || is(Constituent.LastBeats.class)
                || is(Constituent.Parts.class)
                || is(Constituent.HalfBar.class);
    }
}
