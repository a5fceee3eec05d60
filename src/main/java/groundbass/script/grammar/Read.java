package groundbass.script.grammar;

/** A unit and where it stands in the script: offsets of its first character and after its last. */
public record Read(Unit unit, int from, int to) {
    public boolean is(Unit.Tie tie) {
        return unit instanceof Unit.Small small && small.tie() == tie;
    }

    public boolean is(Class<? extends Unit> kind) {
        return kind.isInstance(unit);
    }
}
