package groundbass.post;

import java.util.Optional;

/**
 * Who letters come from, as their reader sees it.
 *
 * @param name    of the site, one line
 * @param replyTo where an answer goes; empty for the address that letters are sent from
 */
public record Correspondent(String name, Optional<EmailAddress> replyTo) {}
