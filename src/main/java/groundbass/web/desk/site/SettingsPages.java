package groundbass.web.desk.site;

import groundbass.catalog.ZoneNames;
import groundbass.catalog.settings.AccountRulesForm;
import groundbass.catalog.settings.Settings;
import groundbass.catalog.settings.SettingsForm;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.shell.CachedSettings;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.FieldProblems;
import groundbass.web.view.LanguageRow;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;

/** What the educator chooses for the whole site. */
public final class SettingsPages implements PageGroup {
    private static final String PATH = "/desk/settings";

    private final DeskContext desk;
    private final Settings settings;
    private final CachedSettings chosen;

    public SettingsPages(DeskContext desk, Settings settings, CachedSettings chosen) {
        this.desk = desk;
        this.settings = settings;
        this.chosen = chosen;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.OWNER, this::show);
        routes.post(PATH, Role.OWNER, this::save);
        routes.post(PATH + "/accounts", Role.OWNER, this::saveAccounts);
    }

    private void show(Context ctx) {
        desk.pages().show(ctx, "desk/settings", View.of(chosenNow(), accountsNow(), FieldProblems.NONE));
    }

    private AccountRulesForm accountsNow() {
        return AccountRulesForm.of(settings.current().accounts());
    }

    private void saveAccounts(Context ctx) {
        var form = new AccountRulesForm(FormParameters.text(ctx, "idleMonths"), FormParameters.text(ctx, "age"));
        var outcome = settings.saveAccountRules(desk.educator(ctx), form);
        if (outcome.result().isPresent()) {
            saved(ctx);
        } else {
            var problems = new FieldProblems(outcome.problems());
            desk.pages().showAgain(ctx, "desk/settings", View.of(chosenNow(), form, problems));
        }
    }

    private void saved(Context ctx) {
        chosen.forget();
        Flash.say(ctx, "desk.saved");
        ctx.redirect(PATH, HttpStatus.SEE_OTHER);
    }

    private SettingsForm chosenNow() {
        var now = settings.current();
        var form = SettingsForm.of(now);
        return new SettingsForm(
                form.siteName(),
                form.language(),
                form.downloadsNeedSignIn(),
                ZoneNames.of(now.defaultZone()),
                form.publicAddress(),
                form.countsVisits(),
                form.triesLinks());
    }

    private void save(Context ctx) {
        var form = read(ctx);
        var outcome = settings.save(desk.educator(ctx), form);
        if (outcome.result().isPresent()) {
            saved(ctx);
        } else {
            var problems = new FieldProblems(outcome.problems());
            desk.pages().showAgain(ctx, "desk/settings", View.of(form, accountsNow(), problems));
        }
    }

    private static SettingsForm read(Context ctx) {
        return new SettingsForm(
                FormParameters.text(ctx, "siteName"),
                FormParameters.text(ctx, "language"),
                FormParameters.ticked(ctx, "downloadsNeedSignIn"),
                FormParameters.text(ctx, "defaultZone"),
                FormParameters.text(ctx, "publicAddress"),
                FormParameters.ticked(ctx, "countsVisits"),
                FormParameters.ticked(ctx, "triesLinks"));
    }

    /** What the page shows. */
    public record View(
            SettingsForm form,
            AccountRulesForm accounts,
            List<String> zones,
            List<LanguageRow> languages,
            FieldProblems problems) {
        static View of(SettingsForm form, AccountRulesForm accounts, FieldProblems problems) {
            var zones = ZoneNames.all();
            return new View(form, accounts, zones, LanguageRow.with(form.language()), problems);
        }
    }
}
