package groundbass.catalog.educator;

import java.util.Locale;

/** What an educator is to the site as a whole; what they are to a series is told by the series. */
public enum SiteStanding {
    /** Keeps the site: settings, imprint, letters, backups, and who else is here. There is one. */
    OWNER,
    /** Begins series of their own. */
    TEACHER,
    /** Works on what others share with them. */
    GUEST;

    public boolean keepsSite() {
        return this == OWNER;
    }

    public boolean mayBegin() {
        return this != GUEST;
    }

    /** Its name in the message bundles. */
    public String key() {
        return "people.standing." + name().toLowerCase(Locale.ROOT);
    }
}
