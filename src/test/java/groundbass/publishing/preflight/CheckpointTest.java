package groundbass.publishing.preflight;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.settings.Imprint;
import groundbass.document.BackingTrack;
import groundbass.document.BarMap;
import groundbass.document.Clearance;
import groundbass.document.DocumentEdit;
import groundbass.document.DocumentSettings;
import groundbass.document.EpisodeDocument;
import groundbass.document.GrooveSource;
import groundbass.document.LessonFacts;
import groundbass.document.LessonFacts.CoursePointer;
import groundbass.document.Level;
import groundbass.document.LineSource;
import groundbass.document.Rights;
import groundbass.document.UploadId;
import groundbass.document.WalkthroughEdit;
import groundbass.identity.Sha256;
import groundbass.lesson.Lesson;
import groundbass.publishing.preflight.LessonRemark.Weight;
import groundbass.text.Message;
import groundbass.text.Messages;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Every checkpoint is walked: each is told in both languages, passes a lesson that is in order, and fails one that is not. */
class CheckpointTest {
    private static final EpisodeId ID = EpisodeId.next();
    private static final Imprint TEACHER = new Imprint("Quay Studio", "desk@example.org", "", "", "");
    private static final BarMap TWO_BARS =
            new BarMap(List.of(new BarMap.Start(1, 1, 1, 0.5), new BarMap.Start(2, 1, 1, 2.5)), 4.5);

    /** What spoils a document for each; the others are spoiled by what is around it. */
    private static final Map<Checkpoint, UnaryOperator<DocumentEdit>> SPOILED = Map.ofEntries(
            Map.entry(Checkpoint.DETAILS, edit -> edit.title(" ")),
            Map.entry(Checkpoint.LINES, edit -> edit.mainLine(new LineSource("", "bar 1\n1-4 E58\n"))),
            Map.entry(Checkpoint.FINDINGS, edit -> edit.mainLine(new LineSource("", "bar 1\n1 E5+A9\n2-4 rest\n"))),
            Map.entry(Checkpoint.SOUND, edit -> edit.groove(new GrooveSource("", "columns 4\nkick x-q-\n"))),
            Map.entry(Checkpoint.RECORDINGS, edit -> edit.backingTracks(List.of(recording(TWO_BARS)))),
            Map.entry(Checkpoint.NOTES, edit -> edit.notes("![The turn](bars:40-41)")),
            Map.entry(Checkpoint.PICTURES, edit -> edit.notes("![](bars:1)")),
            Map.entry(Checkpoint.LINKS, edit -> edit.notes("[Here](www.example.org)")),
            Map.entry(Checkpoint.WALKTHROUGH, CheckpointTest::loseWords),
            Map.entry(Checkpoint.RIGHTS, edit -> edit.rights(new Rights("", "", "Asked.", Clearance.WAITING))),
            Map.entry(Checkpoint.CAUTIONS, edit -> edit.settings(new DocumentSettings("fr", "100"))));

    private static DocumentEdit loseWords(DocumentEdit edit) {
        var told = Lesson.of(good()).walkthrough(0).steps().get(1).told();
        return edit.mainLine(new LineSource("", "bar 1\n1-2 A9\n3-4 A2\n"))
                .walkthroughEdits(List.of(new WalkthroughEdit(0, told.anchor().toString(), 1, "Lean into it.")));
    }

    private static BackingTrack recording(BarMap map) {
        return new BackingTrack(
                new UploadId("upload2345678923"), Sha256.of(new byte[] {1}), "Take one", BackingTrack.Kind.FULL, map);
    }

    private static EpisodeDocument good() {
        return EpisodeDocument.titled("Slack Water", Level.BEGINNER)
                .edit()
                .mainLine(new LineSource("", "key A dorian\n\nbar 1 over Am7\n1 2 3 4  A5*2, E5, A5\n"))
                .rights(new Rights("", "", "Own work.", Clearance.OWN))
                .done();
    }

    private static Inspection look(EpisodeDocument document, String site, Around around) {
        return new Preflight(() -> site).look(ID, document, around);
    }

    private static Around around() {
        return new Around(
                Optional.of(TEACHER),
                Optional.of(new MailOutlook(3, true, 0)),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Missing.NOTHING);
    }

    /** What is said of a lesson that only this checkpoint finds fault with. */
    private static List<LessonRemark> spoiled(Checkpoint point) {
        var document =
                SPOILED.getOrDefault(point, edit -> edit).apply(good().edit()).done();
        String site = point == Checkpoint.ADDRESS ? "http://localhost:8420" : "https://example.org";
        return look(document, site, spoiledAround(point)).remarks(point);
    }

    private static Around spoiledAround(Checkpoint point) {
        var fine = around();
        return switch (point) {
            case TEACHER ->
                new Around(
                        Optional.of(Imprint.EMPTY),
                        fine.mail(),
                        fine.difference(),
                        fine.day(),
                        fine.links(),
                        fine.missing());
            case MAIL ->
                new Around(
                        fine.imprint(),
                        Optional.of(new MailOutlook(3, false, 2)),
                        fine.difference(),
                        fine.day(),
                        fine.links(),
                        fine.missing());
            case RELEASE ->
                new Around(
                        fine.imprint(),
                        fine.mail(),
                        Optional.of(new Difference(1, true, List.of(Message.of("publishing.part.notes")))),
                        fine.day(),
                        fine.links(),
                        fine.missing());
            default -> fine;
        };
    }

    @ParameterizedTest
    @EnumSource(Checkpoint.class)
    void eachPassesWhatIsInOrderAndFailsWhatIsNot(Checkpoint point) {
        assertThat(look(good(), "https://example.org", around()).remarks(point)).isEmpty();
        assertThat(spoiled(point)).isNotEmpty().allSatisfy(remark -> assertThat(remark.point())
                .isEqualTo(point));
    }

    @ParameterizedTest
    @EnumSource(Checkpoint.class)
    void eachIsToldInBothLanguages(Checkpoint point) {
        var looked = look(good(), "https://example.org", around()).looked(point);
        for (var locale : List.of(Locale.ENGLISH, Locale.GERMAN)) {
            var words = Messages.of(locale);
            assertThat(words.say(point.title())).isNotBlank().doesNotContain("publishing.");
            assertThat(words.say(looked)).isNotBlank().doesNotContain("publishing.", "{");
            assertThat(spoiled(point))
                    .allSatisfy(remark ->
                            assertThat(words.say(remark.message())).isNotBlank().doesNotContain("publishing.", "{"));
        }
    }

    @Test
    void theListOfRemarksIsThatOfTheCheckpointsAndNothingElse() {
        var document = EpisodeDocument.titled("", Level.BEGINNER);
        var look = look(document, "http://localhost", Around.site(Imprint.EMPTY, Missing.NOTHING));
        assertThat(look.remarks()).hasSizeGreaterThan(4);
        int counted = 0;
        for (var point : Checkpoint.values()) {
            counted += look.remarks(point).size();
        }
        assertThat(look.remarks()).hasSize(counted);
    }

    /** RFC 3986 sections 3.1 to 3.3: a scheme, a host, and no space; CommonMark 0.31 section 6.3 for what is a link. */
    @ParameterizedTest
    @CsvSource({
        "[Here](https://example.org/a?b=c#d), false",
        "[Here](http://example.org), false",
        "<https://example.org>, false",
        "[Write](mailto:desk@example.org), false",
        "[Slowly](practise:1@60), false",
        "[All lessons](/series/low-tide), false",
        "`[Here](https://exa mple.org)`, false",
        "[Here](example.org), true",
        "[Here](https://exa mple.org/a), true",
        "[Here](<https://exa mple.org/a>), true",
        "[Here](ftp://example.org), true",
        "[Here](https://), true",
        "[Here](javascript:alert), true",
        "[Here](http://localhost:8420/a), true",
        "[Here](https://127.0.0.1/), true"
    })
    void aLinkOfTheNotesIsAnAddressOnTheWeb(String notes, boolean wrong) {
        var document = good().edit().notes("First.\n\n" + notes + "\n").done();
        var remarks = look(document, "https://example.org", around()).remarks(Checkpoint.LINKS);
        assertThat(remarks.size()).isEqualTo(wrong ? 1 : 0);
        assertThat(remarks).allSatisfy(remark -> assertThat(remark.weight()).isEqualTo(Weight.ASKS));
    }

    @Test
    void aCourseOnThisComputerAloneAsks() {
        var facts = new LessonFacts("", "", List.of(new CoursePointer("Next", "https://localhost/next")), "");
        var document = good().edit().facts(facts).done();
        assertThat(look(document, "https://example.org", around()).remarks(Checkpoint.LINKS))
                .singleElement()
                .satisfies(remark -> assertThat(remark.field()).isEqualTo("facts.courses"));
    }

    @Test
    void aRecordingWithTheBarsOfTheLineIsFineAndSoIsOneWithoutAny() {
        var one = new BarMap(List.of(new BarMap.Start(1, 1, 1, 0.5), new BarMap.Start(1, 1, 2, 2.5)), 4.5);
        var document = good().edit()
                .backingTracks(List.of(recording(one), recording(BarMap.NONE)))
                .done();
        assertThat(look(document, "https://example.org", around()).remarks(Checkpoint.RECORDINGS))
                .isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"![](bars:40-41)", "![The turn](bars:1)", "![](https://example.org/picture.png)"})
    void wordsAreAskedForWherePiecesAreShown(String notes) {
        var document = good().edit().notes(notes).done();
        assertThat(look(document, "https://example.org", around()).remarks(Checkpoint.PICTURES))
                .isEmpty();
    }

    @Test
    void whereNobodyWaitsForLettersNothingIsToBeSaidOfThem() {
        assertThat(Preflight.mail(new MailOutlook(0, false, 5))).isEmpty();
    }

    @Test
    void aFindingKnowsItsBar() {
        assertThat(spoiled(Checkpoint.FINDINGS))
                .anySatisfy(remark -> assertThat(remark.bar()).isEqualTo(1));
    }
}
