package groundbass.catalog.settings;

import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.series.Outlook;
import groundbass.catalog.series.SeriesId;
import groundbass.document.HouseStyle;
import groundbass.document.SheetAbbreviations;
import groundbass.document.SheetAids;
import groundbass.document.SheetLetters;
import groundbass.document.SheetPaper;
import groundbass.form.Outcome;
import groundbass.store.NamedValues;
import java.net.URI;
import java.time.ZoneId;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** Keeps the {@link SiteSettings}, one row each; what has no row has its usual value. */
public final class Settings {
    private static final String SITE_NAME = "site.name";
    private static final String LANGUAGE = "site.language";
    private static final String SIGN_IN = "downloads.need-sign-in";
    private static final String ZONE = "zone.default";
    private static final String ADDRESS = "public.address";
    private static final String IMPRINT = "imprint.";
    private static final String LETTERS = "letters.";
    private static final String ABBREVIATIONS = "abbreviations.";
    private static final String PAPER = "paper.";
    private static final String AIDS = "aids.";
    private static final String OUTLOOK = "outlook.";

    private final Jdbi jdbi;
    private final Audit audit;

    public Settings(Jdbi jdbi, Audit audit) {
        this.jdbi = jdbi;
        this.audit = audit;
    }

    public SiteSettings current() {
        var chosen = jdbi.withHandle(NamedValues::all);
        var usual = SiteSettings.USUAL;
        return new SiteSettings(
                chosen.getOrDefault(SITE_NAME, usual.siteName()),
                chosen.getOrDefault(LANGUAGE, usual.language()),
                Boolean.parseBoolean(chosen.get(SIGN_IN)),
                Optional.ofNullable(chosen.get(ZONE)).map(ZoneId::of).orElse(usual.defaultZone()),
                Optional.ofNullable(chosen.get(ADDRESS))
                        .filter(text -> !text.isEmpty())
                        .map(URI::create),
                imprint(chosen));
    }

    private static Imprint imprint(Map<String, String> chosen) {
        return new Imprint(
                chosen.getOrDefault(IMPRINT + "name", ""),
                chosen.getOrDefault(IMPRINT + "email", ""),
                chosen.getOrDefault(IMPRINT + "words", ""),
                chosen.getOrDefault(IMPRINT + "legal", ""),
                chosen.getOrDefault(IMPRINT + "guardians", ""));
    }

    /** Saves who answers for the site, where nothing is wrong with it as typed. */
    public Outcome<Imprint> saveImprint(EducatorId who, Imprint typed) {
        var problems = typed.problems();
        if (!problems.isEmpty()) {
            return Outcome.refused(problems);
        }
        var imprint = typed.stripped();
        jdbi.useTransaction(handle -> {
            NamedValues.put(handle, IMPRINT + "name", imprint.name());
            NamedValues.put(handle, IMPRINT + "email", imprint.email());
            NamedValues.put(handle, IMPRINT + "words", imprint.words());
            NamedValues.put(handle, IMPRINT + "legal", imprint.legal());
            NamedValues.put(handle, IMPRINT + "guardians", imprint.guardians());
            audit.append(handle, who, "imprint.changed", imprint.name());
        });
        return Outcome.done(imprint);
    }

    /** Saves what an educator typed, where nothing is wrong with it. */
    public Outcome<SiteSettings> save(EducatorId who, SettingsForm form) {
        var outcome = form.read();
        outcome.result()
                .ifPresent(settings -> jdbi.useTransaction(handle -> {
                    save(handle, settings);
                    audit.append(handle, who, "settings.changed", settings.siteName());
                }));
        return outcome;
    }

    /** Saves all but who answers for the site; that has a form of its own. */
    public void save(Handle handle, SiteSettings settings) {
        NamedValues.put(handle, SITE_NAME, settings.siteName());
        NamedValues.put(handle, LANGUAGE, settings.language());
        NamedValues.put(handle, SIGN_IN, String.valueOf(settings.downloadsNeedSignIn()));
        NamedValues.put(handle, ZONE, settings.defaultZone().getId());
        NamedValues.put(
                handle, ADDRESS, settings.publicAddress().map(URI::toString).orElse(""));
    }

    /** How a series has its sheets. */
    public HouseStyle style(SeriesId series) {
        return jdbi.withHandle(handle -> new HouseStyle(
                SheetLetters.parse(chosen(handle, LETTERS + series)),
                SheetAbbreviations.parse(chosen(handle, ABBREVIATIONS + series)),
                SheetPaper.parse(chosen(handle, PAPER + series)),
                SheetAids.parse(chosen(handle, AIDS + series))));
    }

    /**
     * Saves how a series has its sheets, where nothing is wrong.
     *
     * @param typed letters as an educator typed them, by the technique's word
     */
    public Outcome<SheetLetters> saveStyle(
            EducatorId who,
            SeriesId series,
            Map<String, String> typed,
            SheetAbbreviations abbreviations,
            SheetPaper paper,
            SheetAids aids) {
        var outcome = SheetLetters.typed(typed);
        outcome.result()
                .ifPresent(letters -> jdbi.useTransaction(handle -> {
                    NamedValues.put(handle, LETTERS + series, letters.toString());
                    NamedValues.put(handle, ABBREVIATIONS + series, abbreviations.toString());
                    NamedValues.put(handle, PAPER + series, paper.toString());
                    NamedValues.put(handle, AIDS + series, aids.toString());
                    audit.append(handle, who, "letters.changed", series.value());
                }));
        return outcome;
    }

    /** What students see of the lessons of a series that wait for their hour. */
    public Outlook outlook(SeriesId series) {
        return jdbi.withHandle(handle -> Outlook.parse(chosen(handle, OUTLOOK + series)));
    }

    public void saveOutlook(EducatorId who, SeriesId series, Outlook outlook) {
        jdbi.useTransaction(handle -> {
            NamedValues.put(handle, OUTLOOK + series, outlook.word());
            audit.append(handle, who, "outlook.changed", series.value());
        });
    }

    /** Empty where nothing is chosen. */
    private static String chosen(Handle handle, String name) {
        return NamedValues.find(handle, name).orElse("");
    }
}
