package groundbass.catalog.settings;

import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.EducatorId;
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
    private static final String VISITS = "visits.counted";
    private static final String LINKS = "links.tried";
    private static final String IMPRINT = "imprint.";
    private static final String IDLE_MONTHS = "accounts.idle-months";
    private static final String AGE = "accounts.age";

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
                Boolean.parseBoolean(chosen.getOrDefault(VISITS, String.valueOf(usual.countsVisits()))),
                Boolean.parseBoolean(chosen.get(LINKS)),
                imprint(chosen),
                new AccountRules(number(chosen, IDLE_MONTHS), number(chosen, AGE)));
    }

    private static Optional<Integer> number(Map<String, String> chosen, String name) {
        return Optional.ofNullable(chosen.get(name))
                .filter(text -> !text.isEmpty())
                .map(Integer::valueOf);
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
            audit.append(handle, who, AuditWord.IMPRINT_CHANGED, imprint.name());
        });
        return Outcome.done(imprint);
    }

    /** Saves what holds for accounts, where nothing is wrong with it as typed. */
    public Outcome<AccountRules> saveAccountRules(EducatorId who, AccountRulesForm form) {
        var outcome = form.read();
        outcome.result()
                .map(AccountRulesForm::of)
                .ifPresent(chosen -> jdbi.useTransaction(handle -> {
                    NamedValues.put(handle, IDLE_MONTHS, chosen.idleMonths());
                    NamedValues.put(handle, AGE, chosen.age());
                    audit.append(handle, who, AuditWord.ACCOUNTS_CHANGED, chosen.idleMonths() + " " + chosen.age());
                }));
        return outcome;
    }

    /** Saves what an educator typed, where nothing is wrong with it. */
    public Outcome<SiteSettings> save(EducatorId who, SettingsForm form) {
        var outcome = form.read();
        outcome.result()
                .ifPresent(settings -> jdbi.useTransaction(handle -> {
                    save(handle, settings);
                    audit.append(handle, who, AuditWord.SETTINGS_CHANGED, settings.siteName());
                }));
        return outcome;
    }

    /** Saves all but who answers for the site and what holds for accounts; these have forms of their own. */
    public void save(Handle handle, SiteSettings settings) {
        NamedValues.put(handle, SITE_NAME, settings.siteName());
        NamedValues.put(handle, LANGUAGE, settings.language());
        NamedValues.put(handle, SIGN_IN, String.valueOf(settings.downloadsNeedSignIn()));
        NamedValues.put(handle, ZONE, settings.defaultZone().getId());
        NamedValues.put(
                handle, ADDRESS, settings.publicAddress().map(URI::toString).orElse(""));
        NamedValues.put(handle, VISITS, String.valueOf(settings.countsVisits()));
        NamedValues.put(handle, LINKS, String.valueOf(settings.triesLinks()));
    }
}
