package groundbass.catalog;

import java.net.URI;
import java.time.ZoneId;
import java.util.HashMap;
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
    private static final String LETTERS = "letters.";

    private final Jdbi jdbi;
    private final Audit audit;

    public Settings(Jdbi jdbi, Audit audit) {
        this.jdbi = jdbi;
        this.audit = audit;
    }

    public SiteSettings current() {
        return jdbi.withHandle(this::current);
    }

    public SiteSettings current(Handle handle) {
        Map<String, String> chosen = new HashMap<>();
        handle.createQuery("select name, chosen from setting")
                .map((row, context) -> Map.entry(row.getString("name"), row.getString("chosen")))
                .forEach(entry -> chosen.put(entry.getKey(), entry.getValue()));
        var usual = SiteSettings.USUAL;
        return new SiteSettings(
                chosen.getOrDefault(SITE_NAME, usual.siteName()),
                chosen.getOrDefault(LANGUAGE, usual.language()),
                Boolean.parseBoolean(chosen.get(SIGN_IN)),
                Optional.ofNullable(chosen.get(ZONE)).map(ZoneId::of).orElse(usual.defaultZone()),
                Optional.ofNullable(chosen.get(ADDRESS))
                        .filter(text -> !text.isEmpty())
                        .map(URI::create));
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

    public void save(Handle handle, SiteSettings settings) {
        put(handle, SITE_NAME, settings.siteName());
        put(handle, LANGUAGE, settings.language());
        put(handle, SIGN_IN, String.valueOf(settings.downloadsNeedSignIn()));
        put(handle, ZONE, settings.defaultZone().getId());
        put(handle, ADDRESS, settings.publicAddress().map(URI::toString).orElse(""));
    }

    /** What a series prints for each technique. */
    public SheetLetters letters(SeriesId series) {
        return jdbi.withHandle(handle -> letters(handle, series));
    }

    public SheetLetters letters(Handle handle, SeriesId series) {
        return handle.createQuery("select chosen from setting where name = :name")
                .bind("name", LETTERS + series.value())
                .mapTo(String.class)
                .findOne()
                .map(SheetLetters::parse)
                .orElse(SheetLetters.USUAL);
    }

    /** Saves the letters that an educator typed for a series, by the technique's word, where nothing is wrong. */
    public Outcome<SheetLetters> saveLetters(EducatorId who, SeriesId series, Map<String, String> typed) {
        var outcome = SheetLetters.typed(typed);
        outcome.result()
                .ifPresent(letters -> jdbi.useTransaction(handle -> {
                    put(handle, LETTERS + series.value(), letters.toString());
                    audit.append(handle, who, "letters.changed", series.value());
                }));
        return outcome;
    }

    private static void put(Handle handle, String name, String chosen) {
        int known = handle.createUpdate("update setting set chosen = :chosen where name = :name")
                .bind("name", name)
                .bind("chosen", chosen)
                .execute();
        if (known == 0) {
            handle.createUpdate("insert into setting (name, chosen) values (:name, :chosen)")
                    .bind("name", name)
                    .bind("chosen", chosen)
                    .execute();
        }
    }
}
