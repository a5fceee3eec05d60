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

    /** Whether it is a number of something. */
    public boolean isAmount() {
        return is(Constituent.Number.class) || is(Constituent.Count.class);
    }

    /** How many. @throws ClassCastException where it is no amount */
    public int many() {
        return unit instanceof Constituent.Number number ? number.value() : ((Constituent.Count) unit).many();
    }

    /** Whether it is something that one counts: strokes, dead notes, triplets, rests, values, notes of a name. */
    public boolean isCounted() {
        return is(Constituent.Played.class)
                || is(Constituent.Dead.class)
                || is(Constituent.Triplet.class)
                || is(Constituent.Silence.class)
                || is(Constituent.Value.class)
                || is(Constituent.Name.class);
    }
}
