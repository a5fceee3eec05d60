package groundbass.catalog.settings;

import java.net.URI;
import java.time.ZoneId;
import java.util.Objects;
import java.util.Optional;

/**
 * What the educator chose for the whole site.
 *
 * @param language      IETF language tag of pages for readers who ask for no language that there is
 * @param defaultZone   the zone that new series begin with
 * @param publicAddress the address that QR codes, mails and feeds begin with, where it is not the one that the server
 *                      was started with; no slash at its end
 * @param countsVisits  whether it is counted what is done with lessons on their pages
 * @param triesLinks    whether the server may ask the net whether the pages are there to which lessons link
 * @param imprint       who answers for the site
 * @param accounts      what holds for the accounts of students
 */
public record SiteSettings(
        String siteName,
        String language,
        boolean downloadsNeedSignIn,
        ZoneId defaultZone,
        Optional<URI> publicAddress,
        boolean countsVisits,
        boolean triesLinks,
        Imprint imprint,
        AccountRules accounts) {
    /** What holds until something is chosen. */
    public static final SiteSettings USUAL =
            new SiteSettings("Groundbass", "en", false, ZoneId.of("UTC"), Optional.empty());

    public SiteSettings {
        Objects.requireNonNull(siteName);
        Objects.requireNonNull(language);
        Objects.requireNonNull(defaultZone);
        Objects.requireNonNull(publicAddress);
        Objects.requireNonNull(imprint);
        Objects.requireNonNull(accounts);
    }

    /** Settings of a site of which nobody has said yet who teaches there. */
    public SiteSettings(
            String siteName,
            String language,
            boolean downloadsNeedSignIn,
            ZoneId defaultZone,
            Optional<URI> publicAddress) {
        this(
                siteName,
                language,
                downloadsNeedSignIn,
                defaultZone,
                publicAddress,
                true,
                false,
                Imprint.EMPTY,
                AccountRules.USUAL);
    }
}
