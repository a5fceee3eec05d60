package groundbass.audience.student;

/** What a sign-in link is worth at this moment. */
public enum LinkState {
    VALID,
    EXPIRED,
    USED,
    UNKNOWN
}
