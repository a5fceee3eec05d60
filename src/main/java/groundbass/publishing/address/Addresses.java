package groundbass.publishing.address;

import groundbass.catalog.episode.EpisodeId;
import java.net.URI;

/** Where things stay on the public site, for what is printed and mailed. */
@FunctionalInterface
public interface Addresses {
    /** What every address of the site begins with, without a slash at its end. */
    String site();

    /** The permanent address of an episode, whatever its number and title become. */
    default String episode(EpisodeId id) {
        return site() + "/e/" + id;
    }

    /** Where its educator works on it. */
    default String desk(EpisodeId id) {
        return site() + "/desk/episodes/" + id;
    }

    /** The addresses as they are now: what asks them often asks once where the site is. */
    default Addresses now() {
        var origin = URI.create(site());
        return new SiteAddresses(() -> origin, isTrial());
    }

    /** Whether the site is for trying out, so that an address on this machine alone is as good as any. */
    default boolean isTrial() {
        return false;
    }
}
