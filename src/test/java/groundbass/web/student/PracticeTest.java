package groundbass.web.student;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.TimeoutError;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.WaitForSelectorState;
import groundbass.audience.visit.LoopedBar;
import groundbass.audience.visit.PlayedPart;
import groundbass.audience.visit.VisitFigures;
import groundbass.audience.visit.VisitKind;
import groundbass.catalog.episode.EpisodeId;
import groundbass.web.Browser;
import groundbass.web.Looks;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** What a student presses, sees and waits for while practising. Sound that is late is held back by the test itself. */
@Tag("browser")
class PracticeTest {
    private static final String LINES = """
            const {lines} = await import(document.querySelector('script[src*="/play.js"]').src);
            const {practice, sheet} = lines[0];
            """;
    private static final Pattern SOUND = Pattern.compile("/play/.*\\.(flac|opus)$");

    /** What the player is at, where it does not get on. */
    private static final String ENGINE =
            "[practice.state, practice.percent, practice.engine.context?.state, practice.engine.context?.sampleRate].join(' ')";

    @RegisterExtension
    static final PlayVisit visit = new PlayVisit();

    @Test
    void everyPressOfATempoButtonCounts() {
        var page = visit.lesson();
        chooseTempo(page, 80);
        page.locator(".practice-go").first().click();
        waitFor(page, "practice.state === 'playing'");
        for (int press = 0; press < 3; press++) {
            page.locator("[data-part=slower]").first().click();
        }
        assertThat(page.locator("[data-part=percent]").first().textContent())
                .as("told at once, three steps of five")
                .isEqualTo("65 %");
        waitFor(page, "practice.engine.heard()?.step?.percent === 65");
    }

    @Test
    void aStepsPieceHasTheInkAndTheFiguresOfTheSheetInTheDark() {
        var page = visit.lesson(1280, ColorScheme.DARK);
        page.locator("#line-bar-1 .steps > li[data-from='1:1/2'] .practice-step")
                .click();
        String looks = "svg => { const {fill, fontVariant} = getComputedStyle(svg); return fill + ' ' + fontVariant; }";
        var piece = page.locator(".practice-piece svg").first();
        assertThat(piece.evaluate(looks))
                .isEqualTo(page.locator(".sheet-wide svg").first().evaluate(looks));
        Looks.keep(page, "piece", 1280, ColorScheme.DARK);
    }

    @Test
    void aStepHasItsControlsAndGivesBackTheLoop() {
        var page = visit.lesson();
        page.locator("[data-part=from]").first().fill("2");
        page.locator("[data-part=to]").first().fill("2");
        page.locator("[data-part=to]").first().press("Enter");
        var step = page.locator("#line-bar-1 .steps > li[data-from='1:1/2'] .practice-step");
        assertThat(step.getAttribute("aria-label")).isEqualTo("Practise this: 1.3");
        step.click();
        waitFor(page, "practice.state !== 'stopped' && practice.range.join(' ') === '1.3 1.3'");
        var beside = page.locator(".practice-beside");
        beside.getByLabel("Slower").click();
        assertThat(beside.locator(".practice-percent").textContent()).isEqualTo("75 %");
        beside.locator("button").first().click();
        waitFor(page, "practice.state === 'stopped'");
        step.click();
        assertThat(told(page, "practice.range.join(' ')")).isEqualTo("2 2");
        assertThat(beside.count()).isZero();
    }

    /** Of 120 beats a minute 50 are 41 2/3 per cent: as they were typed, not the next whole per cent. */
    @Test
    void aTempoIsTypedInBeatsAMinuteAsWell() {
        var page = visit.lesson();
        var tempo = page.locator("[data-part=typedTempo]").first();
        tempo.fill("50");
        tempo.press("Enter");
        tempo.blur();
        assertThat(told(page, "practice.score.bpm(practice.percent).toFixed(3)"))
                .isEqualTo("50.000");
        assertThat(page.locator("[data-part=typed]").first().inputValue()).isEqualTo("41.7");
        tempo.fill("4000");
        tempo.press("Enter");
        tempo.blur();
        assertThat(tempo.inputValue()).as("150 % at most").isEqualTo("180");
        assertThat(page.locator("[data-part=said]").first().textContent()).isEqualTo("From 36 to 180 can be played.");
        chooseTempo(page, 400);
        assertThat(page.locator("[data-part=typed]").first().inputValue()).isEqualTo("150");
        assertThat(page.locator("[data-part=said]").first().textContent()).isEqualTo("From 30 to 150 can be played.");
    }

    /** At 120 beats a minute for the full tempo, 60 is half of it. */
    @Test
    void anAddressLeadsToAPlaceAndFollowsIt() {
        var page = visit.lesson(visit.reader(), "?from=2&to=3.2&tempo=60");
        assertThat(told(page, "practice.range.join(' ') + ' at ' + practice.percent"))
                .isEqualTo("2 3.2 at 50");
        assertThat(told(page, "String(lines[1].practice.range)"))
                .as("another line of the page")
                .isEqualTo("null");
        chooseTempo(page, 65);
        assertThat(page.url()).endsWith("?from=2&to=3.2&tempo=78");
        page.locator("[data-part=whole]").first().click();
        assertThat(page.url()).endsWith("?tempo=78");
    }

    /** The frame is as wide on every screen, and narrower than the beamed group that the note's stem belongs to. */
    @Test
    void theFrameOfTheReachedNoteHidesNothing() {
        var page = visit.lesson();
        page.locator("#sheet").evaluate("sheet => sheet.tabIndex = -1");
        page.locator("#sheet").focus();
        page.keyboard().press("Tab");
        page.locator(".sheet-wide g.event").first().focus();
        page.keyboard().press("ArrowRight");
        page.keyboard().press("ArrowRight");
        var found = (List<?>) page.evaluate("""
                () => {
                  const reached = document.activeElement, frame = document.querySelector('.sheet-reached rect');
                  const style = getComputedStyle(frame);
                  return [style.vectorEffect, style.strokeWidth, getComputedStyle(reached).outlineStyle,
                    frame.getBoundingClientRect().width < 40];
                }""");
        assertThat(found).isEqualTo(List.of("non-scaling-stroke", "3px", "none", true));
        Looks.keep(page, "reached", 1280, ColorScheme.LIGHT);
    }

    /** A call does the same to the page: the browser suspends its audio (W3C Web Audio, AudioContextState). */
    @Test
    void aPauseKeepsTheBarAndSoDoesACall() {
        var page = visit.lesson();
        chooseTempo(page, 100);
        page.locator("[data-part=countIn]").first().uncheck();
        var go = page.locator(".practice-go").first();
        var said = page.locator("[data-part=said]").first();
        page.evaluate("scrollTo(0, document.querySelector('.sheet').getBoundingClientRect().bottom - 60)");
        go.click();
        page.waitForCondition(() -> onTheScreen(page, ".sheet-wide g.event"));
        assertThat(onTheScreen(page, "[data-part=urgent]")).as("the caution").isTrue();
        waitFor(page, "practice.state === 'playing' && practice.place.index === 1");
        go.click();
        assertThat(said.textContent()).isEqualTo("Paused. Play goes on here: Bar 2, count 1");
        go.click();
        waitFor(page, "practice.state === 'playing' && practice.place.index === 1");
        page.evaluate("async () => {" + LINES + "await practice.engine.context.suspend(); }");
        waitFor(page, "practice.state === 'stopped' && practice.place.index === 1");
        assertThat(page.locator("[data-part=urgent]").first().textContent())
                .startsWith("Something else has taken the sound");
        page.locator("[data-part=rewind]").first().click();
        assertThat(told(page, "String(practice.place.index)")).isEqualTo("0");
    }

    /** The sheet is scrolled at once: by itself a page glides there, and what was measured meanwhile has gone on. */
    @Test
    void anEndIsMovedByItsHandleAndABarIsChosenByOnePress() {
        var page = visit.lesson();
        page.locator("[data-part=near-bar]").first().click();
        assertThat(told(page, "practice.range.join(' ')")).isEqualTo("1 1");
        page.locator(".sheet-wide svg")
                .first()
                .evaluate("sheet => sheet.scrollIntoView({block: 'center', behavior: 'instant'})");
        var handle = page.locator(".sheet-wide [data-end=to]").first().boundingBox();
        var last = page.locator(".sheet-wide g.event[data-bar='2']").last().boundingBox();
        page.mouse().move(handle.x + handle.width / 2, handle.y + handle.height - 4);
        page.mouse().down();
        page.mouse().move(last.x + last.width / 2, last.y + last.height / 2);
        page.mouse().up();
        assertThat(told(page, "practice.range.join(' ')")).startsWith("1 2");
    }

    /** The handle goes with the finger, and the page does not (W3C Pointer Events 3, section 10: touch-action). */
    @Test
    void anEndIsMovedByAFinger() {
        var page = visit.lesson(390, ColorScheme.LIGHT);
        page.locator("[data-part=near-bar]").first().click();
        page.locator(".sheet-narrow svg")
                .first()
                .evaluate("sheet => sheet.scrollIntoView({block: 'start', behavior: 'instant'})");
        double place = scrolled(page);
        var handle = page.locator(".sheet-narrow [data-end=to]").first().boundingBox();
        var last = page.locator(".sheet-narrow g.event[data-bar='2']").last().boundingBox();
        PlayVisit.drag(
                page,
                handle.x + handle.width / 2,
                handle.y + handle.height / 2,
                last.x + last.width / 2,
                last.y + last.height / 2);
        assertThat(told(page, "practice.range.join(' ')")).startsWith("1 2");
        assertThat(scrolled(page)).isEqualTo(place);
    }

    /** By how many CSS pixels; a whole number comes as another type than a fraction. */
    private static double scrolled(Page page) {
        return ((Number) page.evaluate("() => scrollY")).doubleValue();
    }

    /** A browser may grant the whole screen late; stand-ins for its functions do when they are told. */
    @Test
    void aStandThatWasClosedBeforeTheScreenWasGrantedLeavesTheScreen() {
        var page = visit.lesson(390, ColorScheme.DARK);
        page.evaluate("() => { window.screens = { all: null, left: 0 };"
                + " Element.prototype.requestFullscreen = () => new Promise(grant => { screens.grant = grant; });"
                + " document.exitFullscreen = () => { screens.left++; return Promise.resolve(); };"
                + " Object.defineProperty(document, 'fullscreenElement', { get: () => screens.all }); }");
        page.locator("[data-part=stand]").first().click();
        waitFor(page, "screens.grant !== undefined");
        page.keyboard().press("Escape");
        page.locator(".stand").waitFor(new Locator.WaitForOptions().setState(WaitForSelectorState.HIDDEN));
        page.evaluate("() => { screens.all = document.body; screens.grant(); }");
        waitFor(page, "screens.left === 1");
    }

    /** The page is as wide as the window and the sheet as the page, however large the notes (ours); Escape by WHATWG HTML, dialog. */
    @Test
    void theStandShowsOneSheetThatFillsTheScreenAndFollowsTheMusic() {
        var page = visit.lesson(390, ColorScheme.DARK);
        page.locator("[data-part=stand]").first().click();
        var svg = page.locator(".stand svg[role=group]");
        svg.waitFor();
        page.keyboard().press("Space");
        waitFor(page, "practice.state === 'playing' && document.querySelectorAll('.stand .event.lit').length > 0");
        assertThat(page.locator("figure.sheet:not(.stand *) .event.lit").count())
                .isZero();
        page.locator(".stand-look summary").click();
        page.locator("input[name=stand-staves][value=tab]").check();
        page.locator("input[name=stand-size][value=largest]").check();
        waitFor(page, "document.querySelector('.stand svg[role=group]').viewBox.baseVal.width < 48");
        assertThat(page.evaluate("() => { const scroll = document.querySelector('.stand-scroll');"
                        + " return scroll.scrollWidth - scroll.clientWidth; }"))
                .isEqualTo(0);
        Looks.keep(page, "stand", 390, ColorScheme.DARK);
        told(page, "String(practice.engine.dispatchEvent(new CustomEvent('problem', {detail: new Error()})))");
        assertThat(page.locator(".stand-said").textContent())
                .as("the panel lies behind")
                .startsWith("The sound did not arrive.");
        page.locator(".stand [data-part=go]").click();
        waitFor(page, "practice.state === 'playing'");
        assertThat(page.locator(".stand-said").textContent()).doesNotContain("arrive");
        var loop = page.locator(".stand-loop");
        loop.click();
        assertThat(loop.getAttribute("aria-pressed")).isEqualTo("true");
        loop.click();
        assertThat(told(page, "String(practice.range)")).isEqualTo("null");
        page.keyboard().press("Escape");
        assertThat(page.locator(".stand").isVisible()).isFalse();
        waitFor(page, "document.querySelectorAll('.sheet-narrow .event.lit').length > 0");
        page.locator("input[name=line-size][value=largest]").check();
        waitFor(page, "document.querySelectorAll('.sheet-fitted .event.lit').length > 0");
        assertThat(page.evaluate("() => document.documentElement.scrollWidth")).isEqualTo(390);
        assertThat(page.locator(".sheet-narrow").first().isVisible()).isFalse();
        Looks.keep(page, "largest", 390, ColorScheme.DARK);
    }

    /** From 72 beats a minute (60 % of 120) in one step to 96 (80 %); the time of the rest goes by on the audio clock. */
    @Test
    void theTrainerRestsCountsAndGoesOnAtItsNextTempo() {
        var page = visit.lesson(390, ColorScheme.LIGHT);
        page.locator("[data-part=near-bar]").first().click();
        page.locator("[data-part=countIn]").first().uncheck();
        page.evaluate("async () => {" + LINES + "practice.beginAt({bar: 1, at: 0.5}); practice.stop(); }");
        for (var field : Map.of("climbFrom", "72", "climbTo", "96", "climbStep", "24", "every", "1", "rest", "1")
                .entrySet()) {
            page.locator("[data-part=" + field.getKey() + "]").first().fill(field.getValue());
        }
        page.locator("[data-part=climb]").first().check();
        assertThat(told(page, "String(practice.paused)"))
                .as("a part of a round is no round")
                .isEqualTo("false");
        page.locator(".practice-go").first().click();
        waitFor(page, "practice.engine.heard()?.step?.percent === 60");
        waitFor(
                page,
                "practice.place.rest > 0 && /^Rest: 1 s$/.test("
                        + "document.querySelector('[data-part=place]').textContent)");
        waitFor(page, "practice.place.counting === 1 && !practice.place.rest");
        waitFor(page, "practice.engine.heard()?.step?.percent === 80 && practice.engine.heard().step.round === 1");
        assertThat(page.locator("[data-part=percent]").first().textContent()).isEqualTo("96 bpm");
        assertThat(page.locator("[data-part=typedTempo]").first().inputValue()).isEqualTo("96");
        assertThat(page.locator("[data-part=silent]").first().isHidden()).isTrue();
        page.keyboard().press("1");
        assertThat(page.locator("[data-part=silent]").first().textContent()).isEqualTo("Without: Bass");
        Looks.keep(page, "trainer", 390, ColorScheme.LIGHT);
        page.locator("[data-part=slower]").first().click();
        assertThat(page.locator("[data-part=climb]").first().isChecked()).isFalse();
    }

    @Test
    void whatIsCountedInIsSureToFollow() {
        var page = visit.lesson();
        Queue<Route> held = new ConcurrentLinkedQueue<>();
        page.route(SOUND, held::add);
        chooseTempo(page, 60);
        page.locator(".practice-go").first().click();
        try {
            page.waitForCondition(() -> !held.isEmpty());
        } catch (TimeoutError e) {
            throw new AssertionError("no sound was asked for: " + told(page, ENGINE), e);
        }
        assertThat(page.locator("[data-part=said]").first().textContent()).isEqualTo("Waiting for the sound");
        assertThat(told(page, "String(practice.place.counting)")).isEqualTo("undefined");
        page.unroute(SOUND);
        page.route(SOUND, Route::resume);
        held.forEach(Route::resume);
        waitFor(page, "practice.place.counting !== undefined");
        waitFor(page, "practice.state === 'playing' && practice.place.index === 0");
    }

    @Test
    void aHoleInTheSoundIsWaitedForAndCountedInAgain() {
        var page = visit.lesson();
        chooseTempo(page, 100);
        page.locator("[data-part=countIn]").first().check();
        told(page, """
                (() => {
                  const {source} = practice.engine, ready = source.ready.bind(source), load = source.load.bind(source);
                  window.late = new Promise(arrives => { window.arrive = arrives; });
                  let there = false;
                  window.late.then(() => { there = true; });
                  const held = step => step.index >= 1 && !there;
                  source.ready = step => held(step) ? null : ready(step);
                  source.load = async steps => { if (steps.some(held)) await window.late; return load(steps); };
                  return '';
                })()""");
        page.locator(".practice-go").first().click();
        waitFor(page, "practice.state === 'playing'");
        waitFor(
                page,
                "practice.state === 'loading' && practice.place.index === 1"); // after bar 1, whose neighbour is late
        assertThat(page.locator("[data-part=said]").first().textContent()).isEqualTo("Waiting for the sound");
        page.evaluate("() => window.arrive()");
        waitFor(page, "practice.place.counting !== undefined");
        waitFor(page, "practice.state === 'playing' && practice.place.index === 1");
    }

    /** Bar 2 of the four, twice and into the third time: a quarter of the line, and one bar that was repeated. */
    @Test
    void whatWasPlayedIsToldAsThePageIsLeftAndStandsOnTheEducatorsSheet() {
        var page = visit.lesson(visit.reader(), "?from=2&to=2");
        chooseTempo(page, 150);
        page.locator("[data-part=countIn]").first().uncheck();
        page.locator(".practice-go").first().click();
        waitFor(page, "practice.engine.heard()?.step?.round >= 1");
        page.navigate(visit.address() + "/privacy");
        var lesson = visit.shelf().episode(1).id();
        var figures = new VisitFigures(visit.site().groundbass().database().jdbi());
        page.waitForCondition(() -> {
            visit.site().groundbass().settle();
            return figures.loops(lesson).stream().anyMatch(bar -> bar.bar() == 2);
        });
        assertThat(figures.loops(lesson)).contains(new LoopedBar(1, "line", 2, 1));
        assertThat(figures.parts(lesson)).contains(new PlayedPart("line", 0, 1), new PlayedPart("line", 1, 1));
        var visits = figures.of(List.of(lesson)).get(0);
        assertThat(visits.of(VisitKind.VIEW).inAll())
                .as("one visitor in all tests")
                .isEqualTo(1);
        for (int width : new int[] {390, 1280}) {
            for (var scheme : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
                atTheDesk(width, scheme, lesson);
            }
        }
    }

    private static void atTheDesk(int width, ColorScheme scheme, EpisodeId lesson) {
        var desk = visit.reader(width, scheme);
        String session = visit.site().atTheDesk().getValue();
        desk.context().setExtraHTTPHeaders(Map.of("Cookie", "session=" + session));
        desk.navigate(visit.address() + "/desk/statistics/episodes/" + lesson);
        desk.locator(".repeated-bars rect").first().waitFor();
        Looks.keep(desk, "statistics-played", width, scheme);
        assertThat(desk.locator(".repeated-bars:visible rect").count()).isEqualTo(1);
        assertThat(Browser.overflow(desk)).as("pixels wider than the screen").isZero();
        assertThat(Browser.barriers(desk)).isEmpty();
    }

    /** Whether the first of these lies in the window, and not behind its edges. */
    private static boolean onTheScreen(Page page, String which) {
        return (boolean) page.locator(which)
                .first()
                .evaluate("part => { const {top, bottom} = part.getBoundingClientRect();"
                        + " return top >= 0 && bottom > top && bottom <= innerHeight; }");
    }

    private static void chooseTempo(Page page, int percent) {
        var typed = page.locator("[data-part=typed]").first();
        typed.fill("" + percent);
        typed.press("Enter");
        typed.blur();
    }

    private static String told(Page page, String script) {
        return (String) page.evaluate("async () => { " + LINES + " return " + script + "; }");
    }

    private static void waitFor(Page page, String condition) {
        page.waitForCondition(() -> (Boolean) page.evaluate("async () => { " + LINES + " return " + condition + "; }"));
    }
}
