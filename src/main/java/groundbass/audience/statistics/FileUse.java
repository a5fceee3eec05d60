package groundbass.audience.statistics;

/** How often one file of an episode was taken, over all its releases. */
public record FileUse(String name, DownloadCounts downloads) {}
