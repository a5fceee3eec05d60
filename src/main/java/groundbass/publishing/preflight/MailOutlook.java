package groundbass.publishing.preflight;

/**
 * How letters about a lesson will go out.
 *
 * @param readers how many agreed to the news of its series and can be reached
 * @param leaves whether a mail server takes them; otherwise they lie on the desk
 * @param undelivered how many letters of the last days came to nobody
 */
public record MailOutlook(int readers, boolean leaves, int undelivered) {}
