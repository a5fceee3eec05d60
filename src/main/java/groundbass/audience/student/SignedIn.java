package groundbass.audience.student;

/** What came of using a sign-in link. */
public sealed interface SignedIn {
    /**
     * A session is open.
     *
     * @param token for the browser to carry
     * @param first whether this made the account
     */
    record As(StudentId student, SecretToken token, boolean first) implements SignedIn {}

    /** Nothing happened; {@code why} is not {@link LinkState#VALID}. */
    record Refused(LinkState why) implements SignedIn {}

    /** Nothing happened, and link and code are still good: they want an answer about age first. */
    record AgeWanted() implements SignedIn {}
}
