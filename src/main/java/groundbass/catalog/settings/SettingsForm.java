package groundbass.catalog.settings;

import groundbass.catalog.FieldChecks;
import groundbass.catalog.ZoneNames;
import groundbass.form.FieldProblem;
import groundbass.form.Outcome;
import java.net.URI;
import java.net.URISyntaxException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/** The site's settings as typed. */
public record SettingsForm(
        String siteName,
        String language,
        boolean downloadsNeedSignIn,
        String defaultZone,
        String publicAddress,
        boolean countsVisits,
        boolean triesLinks) {
    public SettingsForm {
        Objects.requireNonNull(siteName);
        Objects.requireNonNull(language);
        Objects.requireNonNull(defaultZone);
        Objects.requireNonNull(publicAddress);
    }

    /** The form that shows what is chosen now. */
    public static SettingsForm of(SiteSettings settings) {
        return new SettingsForm(
                settings.siteName(),
                settings.language(),
                settings.downloadsNeedSignIn(),
                settings.defaultZone().getId(),
                settings.publicAddress().map(URI::toString).orElse(""),
                settings.countsVisits(),
                settings.triesLinks());
    }

    /** The settings, or what is wrong with them. */
    public Outcome<SiteSettings> read() {
        List<FieldProblem> problems = new ArrayList<>(FieldChecks.line("siteName", siteName, 80));
        var tag = FieldChecks.languageTag(language);
        if (tag.isEmpty()) {
            problems.add(FieldProblem.of("language", "catalog.problem.language", language));
        }
        var zone = ZoneNames.read(defaultZone);
        if (zone.isEmpty()) {
            problems.add(FieldProblem.of("defaultZone", "catalog.problem.zone", defaultZone));
        }
        Optional<URI> address = publicAddress.isBlank() ? Optional.empty() : address(publicAddress.strip());
        if (!publicAddress.isBlank() && address.isEmpty()) {
            problems.add(FieldProblem.of("publicAddress", "catalog.problem.address", publicAddress));
        }
        return problems.isEmpty()
                ? Outcome.done(new SiteSettings(
                        siteName.strip(),
                        tag.orElseThrow(),
                        downloadsNeedSignIn,
                        zone.orElseThrow(),
                        address,
                        countsVisits,
                        triesLinks,
                        Imprint.EMPTY,
                        AccountRules.USUAL))
                : Outcome.refused(problems);
    }

    private static Optional<URI> address(String text) {
        try {
            var uri = new URI(text.replaceAll("/+$", ""));
            boolean web = "http".equalsIgnoreCase(uri.getScheme()) || "https".equalsIgnoreCase(uri.getScheme());
            boolean plain = uri.getHost() != null
                    && uri.getRawUserInfo() == null
                    && uri.getRawQuery() == null
                    && uri.getRawFragment() == null;
            return web && plain ? Optional.of(uri) : Optional.empty();
        } catch (URISyntaxException e) {
            return Optional.empty();
        }
    }
}
