package groundbass.script.checking;

/** What comes of checking a statement. */
public sealed interface Verdict {
    Verdict AGREES = new Agrees();
    Verdict IN_PART = new InPart();
    Verdict CANNOT_TELL = new CannotTell();

    /** The neck or the line says the same. */
    record Agrees() implements Verdict {}

    /** Under every plausible reading, the neck or the line says otherwise. */
    record Contradicts(Right right) implements Verdict {}

    /** What was read of the statement is so, but it says more than was read. */
    record InPart() implements Verdict {}

    /** The statement is not sure enough to be checked. */
    record CannotTell() implements Verdict {}
}
