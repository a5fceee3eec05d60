package groundbass.audience.download;

/**
 * A download whose row is committed; the first byte may go.
 *
 * @param token for the client to bring along with further ranges, in the address or in a cookie of this file alone
 */
public record StartedDownload(DownloadId id, String token) {}
