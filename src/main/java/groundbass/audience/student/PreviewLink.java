package groundbass.audience.student;

import java.time.Instant;

/**
 * A link that works at this moment, without the secret that opens it.
 *
 * @param id      names it in a form
 * @param release the id of what it shows
 * @param reader  for whom it was made, as the educator calls them
 */
public record PreviewLink(String id, String release, String reader, Instant createdAt, Instant expiresAt) {}
