package groundbass.web.student;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.Cookie;
import groundbass.audience.student.Person;
import groundbass.audience.student.StudentId;
import groundbass.catalog.episode.Withdrawal;
import groundbass.store.Instants;
import groundbass.web.Browser;
import groundbass.web.Looks;
import java.time.Duration;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** Lessons that a device keeps, with a net and without one. */
@Tag("browser")
class KeepTest {
    private static final int PHONE = 390;
    private static final String KEEP = "Keep on this device";

    @RegisterExtension
    static final PlayVisit visit = new PlayVisit();

    @Test
    void aKeptLessonIsReadAndPlayedWithoutANetAndGoesByOnePress() {
        var page = visit.lesson(PHONE, ColorScheme.LIGHT);
        assertThat(part(page, "size")).hasText(Pattern.compile("about [0-9.]+ MB"));
        assertThat(left(page)).isEqualTo("0 caches, 0 workers");
        keep(page);
        page.context().setOffline(true);
        visit.lesson(page, "");
        assertThat(part(page, "note")).containsText("the copy of this lesson that this device keeps, of");
        assertThat(Browser.barriers(page)).isEmpty();
        Looks.keep(page, "kept-lesson", PHONE, ColorScheme.LIGHT);
        plays(page);
        standShowsItsOwnSheets(page);
        page.navigate(visit.address() + "/sign-in");
        assertThat(page.getByText("You are offline, and the page you asked for needs a connection."))
                .isVisible();
        page.navigate(visit.address() + "/e/" + visit.shelf().episode(1).id());
        assertThat(part(page, "note")).isVisible();
        page.navigate(visit.address());
        looksWell(page);
        assertThat(page.getByRole(AriaRole.LINK, named("Four Ropes"))).isVisible();
        button(page, "Remove: Four Ropes").click();
        assertThat(page.getByText("Nothing yet.")).isVisible();
        assertThat(button(page, "Remove all")).isHidden();
        assertThat(page.getByRole(AriaRole.STATUS).last()).hasText("Removed: Four Ropes");
        assertThat(left(page)).isEqualTo("0 caches, 0 workers");
    }

    /** In a browser that decodes no Opus, which keeps sound without loss. */
    @Test
    void aBrokenOffFetchIsToldAndTakenUpAndNeverTakenForWhole() {
        var page = visit.reader(PHONE, ColorScheme.DARK);
        page.addInitScript("""
                BaseAudioContext.prototype.decodeAudioData = () => Promise.reject(new DOMException('', 'EncodingError'));
                const real = window.fetch;
                window.broken = true;
                window.asked = [];
                window.fetch = (asked, ...more) => {
                  window.asked.push(String(asked));
                  const drums = /line-100-drums-[0-9a-f]+[.]flac$/.test(asked);
                  if (window.broken && drums) return Promise.reject(new TypeError('the line is down'));
                  return window.gate && drums ? window.gate.then(() => real(asked, ...more)) : real(asked, ...more);
                };""");
        visit.lesson(page, "");
        button(page, KEEP).evaluate("button => { button.click(); button.click(); }");
        assertThat(part(page, "said")).containsText("The fetching was broken off, and not all of it is here.");
        assertThat((List<?>) page.evaluate("() => window.asked.filter(one => one === location.pathname)"))
                .as("two presses are one")
                .hasSize(1);
        assertThat(button(page, "Go on")).isVisible();
        assertThat(button(page, "Stop")).isHidden();
        page.context().setOffline(true);
        page.navigate(visit.address() + PlayVisit.LESSON);
        assertThat(page.getByText("Not all of it is here.")).isVisible();
        page.context().setOffline(false);
        visit.lesson(page, "");
        assertThat(part(page, "said")).containsText("Not all of it is here");
        page.evaluate("() => { window.broken = false; window.asked.length = 0;"
                + " window.gate = new Promise(done => { window.letGo = done; }); }");
        button(page, "Go on").click();
        assertThat(button(page, "Stop")).isFocused();
        var field = page.locator("[data-part=typed]").first();
        field.focus();
        page.evaluate("() => window.letGo()");
        assertThat(part(page, "said")).containsText("Kept on this device on");
        assertThat(field).isFocused(); // who practises meanwhile is left where they are
        var again = (List<?>) page.evaluate("() => window.asked.filter(one => /flac|opus|groundbass.css/.test(one))");
        assertThat(again)
                .as("what had come is not fetched again")
                .isNotEmpty()
                .noneMatch(one -> one.toString().contains("groundbass.css"))
                .noneMatch(one -> one.toString().endsWith(".opus"))
                .anyMatch(one -> one.toString().contains("line-100-drums-"));
        button(page, "Remove from this device").click();
        assertThat(part(page, "said")).containsText("Removed");
        assertThat(left(page)).isEqualTo("0 caches, 0 workers");
    }

    @Test
    void aLessonThatIsRemovedWhileItComesIsNotTakenForWhole() {
        var page = visit.reader();
        page.addInitScript("""
                const real = window.fetch;
                window.fetch = async (asked, ...more) => {
                  if (String(asked).endsWith('line-100-drums.opus')) {
                    for (const name of await caches.keys()) await caches.delete(name);
                    window.removed = true;
                  }
                  return real(asked, ...more);
                };""");
        visit.lesson(page, "");
        button(page, KEEP).click();
        page.waitForCondition(() -> (Boolean) page.evaluate("() => window.removed === true"));
        assertThat(button(page, KEEP)).isVisible();
        assertThat(part(page, "said")).containsText("Removed");
        assertThat(left(page)).isEqualTo("0 caches, 0 workers");
    }

    @Test
    void aCorrectionIsToldAndKeptAndWhatIsTakenBackGoes() {
        var page = visit.lesson();
        keep(page);
        page.context().setOffline(true);
        String thumb = visit.shelf().picture(1, "The thumb rests on the E string");
        var corrected = Rehearsal.saying("The second bar was wrong.")
                .edit()
                .notes("Look.\n\n" + thumb)
                .done();
        visit.shelf().correct(1, corrected);
        visit.site().clock().advance(Duration.ofSeconds(2)); // what was found holds for a second
        visit.lesson(page, "");
        assertThat(page.getByText("The second bar was wrong.")).isHidden();
        page.context().setOffline(false);
        visit.lesson(page, "");
        assertThat(page.getByText("The second bar was wrong.").first()).isVisible();
        assertThat(part(page, "said")).containsText("This lesson was corrected after you had kept it");
        button(page, "Keep the correction").click();
        assertThat(part(page, "said")).containsText("Kept on this device on");
        page.context().setOffline(true);
        visit.lesson(page, "");
        assertThat(page.getByText("The second bar was wrong.").first()).isVisible();
        var picture = page.getByAltText("The thumb rests on the E string");
        picture.scrollIntoViewIfNeeded();
        page.waitForCondition(() -> (Integer) picture.evaluate("img => img.naturalWidth") == 40);
        page.context().setOffline(false);
        takeBack(page);
    }

    /** Its page answers 410 (RFC 9110 section 15.5.11), and the copy goes. */
    private static void takeBack(Page page) {
        var jdbi = visit.site().groundbass().database().jdbi();
        var lesson = visit.shelf().episode(1).id();
        var withdrawal = new Withdrawal(visit.site().clock().instant(), "");
        jdbi.useTransaction(handle -> visit.shelf().episodes.takeBack(handle, lesson, withdrawal));
        visit.site().clock().advance(Duration.ofSeconds(2));
        page.navigate(visit.address() + PlayVisit.LESSON);
        assertThat(page.getByText("The copy on your device is removed as well."))
                .isVisible();
        assertThat(left(page)).isEqualTo("0 caches, 0 workers");
        jdbi.useTransaction(handle -> visit.shelf().episodes.putBack(handle, lesson));
        visit.site().clock().advance(Duration.ofSeconds(2));
    }

    @Test
    void aCopyKnowsNothingOfWhoIsSignedInAndSpeaksTheirLanguage() {
        var page = visit.reader();
        var student = new Person.OfStudent(student());
        page.context()
                .addCookies(List.of(
                        new Cookie("session", visit.site().signedIn(student).getValue()).setUrl(visit.address()),
                        new Cookie("language", "de").setUrl(visit.address())));
        visit.lesson(page, "");
        assertThat(page.locator("[data-practised]").first()).hasAttribute("data-signed-in", "true");
        button(page, "Favorit").click();
        button(page, "Auf diesem Gerät speichern").click();
        assertThat(part(page, "said")).containsText("auf diesem Gerät,");
        page.context().setOffline(true);
        visit.lesson(page, "");
        assertThat(page.locator("html")).hasAttribute("lang", "de");
        assertThat(page.locator("[data-practised]").first()).hasAttribute("data-signed-in", "false");
        assertThat(page.getByRole(AriaRole.LINK, named("Anmelden")).first()).isVisible();
        // what belongs to an account does not leave with a copy, which does not know it
        assertThat(button(page, "Favorit")).hasAttribute("aria-pressed", "true");
        page.navigate(visit.address() + "/me");
        assertThat(page.getByText("Es ist kein Netz da")).isVisible();
    }

    /** A site that lets nobody keep lessons any more serves another worker in the place of the one that a device has. */
    @Test
    void theWorkerThatSwitchesItOffLeavesNothing() {
        var page = visit.lesson();
        keep(page);
        page.evaluate("async () => navigator.serviceWorker.register('/assets/worker-off.js')");
        page.waitForCondition(() -> left(page).equals("0 caches, 1 workers"));
        // WHATWG HTML, section "Page visibility": a window that is looked at again no longer says that it is kept
        page.evaluate("() => document.dispatchEvent(new Event('visibilitychange'))");
        assertThat(button(page, KEEP)).isVisible();
        assertThat(part(page, "said")).isEmpty();
    }

    @Test
    void aLessonThatWouldNotFitIsNotBegun() {
        var page = visit.reader();
        page.addInitScript("navigator.storage.estimate = async () => ({quota: 1000, usage: 900})");
        visit.lesson(page, "");
        button(page, KEEP).click();
        assertThat(part(page, "said")).containsText("There is not enough room.");
        assertThat(left(page)).isEqualTo("0 caches, 0 workers");
    }

    /** W3C Service Workers: caches are there in secure contexts alone, and a reader may refuse them. */
    @Test
    void whereNothingCanBeKeptNothingIsOffered() {
        var page = visit.reader();
        page.addInitScript("delete window.caches; delete Window.prototype.caches");
        visit.lesson(page, "");
        page.navigate(visit.address() + "/kept");
        assertThat(page.getByText("This browser does not let the site keep anything"))
                .isVisible();
        visit.lesson(page, "");
        assertThat(page.locator(".keep")).isHidden();
        assertThat(visit.complaints()).isEmpty();
    }

    @Test
    void aFormThatCannotBeSentKeepsWhatWasTyped() {
        var page = visit.reader();
        page.navigate(visit.address() + "/sign-in");
        page.locator("input[name=email]").fill("mara@trial.example");
        page.context().setOffline(true);
        page.locator("main form button").first().click();
        assertThat(page.locator("#no-net")).containsText("Nothing was sent");
        assertThat(page.locator("input[name=email]")).hasValue("mara@trial.example");
    }

    private static StudentId student() {
        var id = StudentId.next();
        visit.site()
                .groundbass()
                .database()
                .jdbi()
                .useHandle(handle -> handle.execute(
                        "insert into student (id, email, locale, created_at) values (?, 'keeps@reader.example', 'de', ?)",
                        id.value(),
                        Instants.toColumn(visit.site().clock().instant())));
        return id;
    }

    /** The list is one that everybody can use, on a phone by day and on a desk by night. */
    private static void looksWell(Page page) {
        Browser.turn(page, 1280, ColorScheme.DARK);
        assertThat(Browser.overflow(page)).isZero();
        assertThat(Browser.barriers(page)).isEmpty();
        Looks.keep(page, "kept", 1280, ColorScheme.DARK);
        Browser.turn(page, PHONE, ColorScheme.LIGHT);
        assertThat(Browser.overflow(page)).isZero();
        Looks.keep(page, "kept", PHONE, ColorScheme.LIGHT);
    }

    private static void keep(Page page) {
        button(page, KEEP).click();
        assertThat(part(page, "said")).containsText("Kept on this device on");
    }

    /** The clock of the sound goes on, into the second bar. */
    private static void plays(Page page) {
        page.locator(".practice-go").first().click();
        page.waitForCondition(() -> (Boolean) page.evaluate("""
                async () => {
                  const {lines} = await import(document.querySelector('script[src*="/play.js"]').src);
                  const {practice} = lines[0];
                  return practice.state === 'playing' && practice.place.index >= 1;
                }"""));
        page.locator(".practice-go").first().click();
    }

    private static void standShowsItsOwnSheets(Page page) {
        page.locator(".practice-stand-open").first().click();
        assertThat(page.locator(".stand svg[id*='fitted'], .stand [id*='fitted']")
                        .first())
                .isAttached();
        page.locator(".stand-close").click();
    }

    private static String left(Page page) {
        return (String) page.evaluate("""
                async () => {
                  const ours = (await caches.keys()).length;
                  const workers = (await navigator.serviceWorker.getRegistrations()).length;
                  return `${ours} caches, ${workers} workers`;
                }""");
    }

    private static Locator part(Page page, String name) {
        return page.locator("[data-keep] [data-part='copy-" + name + "']");
    }

    private static Locator button(Page page, String name) {
        return page.getByRole(AriaRole.BUTTON, named(name));
    }

    private static Page.GetByRoleOptions named(String name) {
        return new Page.GetByRoleOptions().setName(name).setExact(true);
    }
}
