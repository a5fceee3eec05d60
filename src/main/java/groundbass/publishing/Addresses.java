package groundbass.publishing;

import groundbass.catalog.episode.EpisodeId;

/** Where things stay on the public site, for what is printed and mailed. */
@FunctionalInterface
public interface Addresses {
    /** The permanent address of an episode, whatever its number and title become. */
    String episode(EpisodeId id);
}
