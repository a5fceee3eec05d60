package groundbass.audience.download;

import java.util.Optional;

/**
 * A GET of a released file. (A HEAD takes nothing and is none.)
 *
 * @param whole whether the whole file is asked for, not a range of it
 * @param token what {@link StartedDownload} gave an earlier range of the same download, if the client brought it along
 */
public record FileRequest(ReleasedFile file, Requester requester, boolean whole, Optional<String> token) {}
