package groundbass.publishing.preflight;

import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.settings.Imprint;
import groundbass.document.Clearance;
import groundbass.document.DocumentSettings;
import groundbass.document.EpisodeDocument;
import groundbass.document.Licence;
import groundbass.document.Rights;
import groundbass.lesson.LessonText;
import groundbass.publishing.address.Addresses;
import groundbass.publishing.address.LocalAddress;
import groundbass.publishing.preflight.LessonRemark.Weight;
import groundbass.text.Languages;
import groundbass.text.Message;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Whatever should be right before a lesson goes out, at each {@link Checkpoint}: what a revision asks for, that every text
 * can be read, what a hand can play, whose music it is, that no word of the educator's is lost, and what is printed for
 * good.
 */
public final class Preflight {
    private final Addresses addresses;

    public Preflight(Addresses addresses) {
        this.addresses = addresses;
    }

    /** All remarks on a document alone, in the order of the checkpoints. */
    public List<LessonRemark> remarks(EpisodeId episode, EpisodeDocument document) {
        return look(episode, document, Around.NOTHING).remarks();
    }

    /** A look at a document and at what is around it. */
    public Inspection look(EpisodeId episode, EpisodeDocument document, Around around) {
        return new Inspection(addresses, episode, LessonText.read(document), around);
    }

    /** The addresses on the web to which a lesson links. */
    public static List<String> addresses(EpisodeDocument document) {
        return LinkRemarks.addresses(document);
    }

    static List<LessonRemark> rights(Rights rights) {
        var remarks = new ArrayList<LessonRemark>();
        if (rights.statement().isBlank()) {
            remarks.add(LessonRemark.blocks(
                    Checkpoint.RIGHTS, "rights.statement", Message.of("publishing.problem.rights")));
        }
        remarks.addAll(clearance(rights));
        return remarks;
    }

    /** While the question is open, permission awaited or nothing said of which one was given, nothing goes out. */
    public static List<LessonRemark> clearance(Rights rights) {
        return switch (rights.clearance()) {
            case OWN, FREE -> List.of();
            case OPEN -> List.of(rights("clearance", Message.of("publishing.problem.clearance.open")));
            case WAITING -> List.of(rights("clearance", Message.of("publishing.problem.clearance")));
            case GIVEN -> given(rights.licence());
        };
    }

    private static List<LessonRemark> given(Licence licence) {
        var remarks = new ArrayList<LessonRemark>();
        if (licence.reference().isBlank()) {
            remarks.add(rights("licence.reference", Message.of("publishing.problem.licence.reference")));
        }
        if (licence.from().isBlank()) {
            remarks.add(rights("licence.from", Message.of("publishing.problem.licence.from")));
        }
        return remarks;
    }

    /** Where a permission ends before the day on which the lesson goes out. */
    public static Optional<LessonRemark> ended(Rights rights, LocalDate day) {
        return rights.licence()
                .lastDay()
                .filter(last -> rights.clearance() == Clearance.GIVEN && last.isBefore(day))
                .map(last -> rights("licence.until", Message.of("publishing.problem.licence.ended", last, day)));
    }

    /** Of a state at which this program itself fails. */
    public static LessonRemark unjudged() {
        return LessonRemark.blocks(Checkpoint.LINES, "mainLine", Message.of("publishing.remark.unjudged"));
    }

    private static LessonRemark rights(String field, Message message) {
        return LessonRemark.blocks(Checkpoint.RIGHTS, "rights." + field, message);
    }

    static List<LessonRemark> lostWords(LessonText text) {
        if (text.main().hasErrors()) {
            return List.of(); // which words are lost is clear once the line can be read
        }
        if (text.document().walkthroughEdits().isEmpty()) {
            return List.of(); // a line is not told for nothing
        }
        var lesson = text.lesson();
        return IntStream.rangeClosed(0, lesson.exercises().size())
                .mapToObj(line -> lesson.walkthrough(line).lost())
                .flatMap(List::stream)
                .map(edit -> new LessonRemark(
                        Checkpoint.WALKTHROUGH,
                        Weight.ASKS,
                        "walkthrough",
                        Message.of("publishing.remark.lost", edit.bar(), edit.sentence()),
                        edit.sentence()))
                .toList();
    }

    /** Sheets and files in a language that is not spoken here carry the cautions in another. */
    static List<LessonRemark> cautions(DocumentSettings settings) {
        var wanted = Locale.forLanguageTag(settings.language());
        if (Languages.spoken(wanted).getLanguage().equals(wanted.getLanguage())) {
            return List.of();
        }
        return List.of(new LessonRemark(
                Checkpoint.CAUTIONS,
                Weight.MENTIONS,
                "settings.language",
                Message.of("publishing.remark.cautions", settings.language()),
                settings.language()));
    }

    static List<LessonRemark> address(Addresses addresses, EpisodeId episode) {
        String printed = addresses.episode(episode);
        return addresses.isTrial() || !LocalAddress.is(printed)
                ? List.of()
                : List.of(new LessonRemark(
                        Checkpoint.ADDRESS,
                        Weight.ASKS,
                        "address",
                        Message.of("publishing.remark.address", printed),
                        printed));
    }

    /** Nothing goes out before readers can know who teaches here. */
    public static Optional<LessonRemark> imprint(Imprint imprint) {
        return imprint.isComplete()
                ? Optional.empty()
                : Optional.of(
                        LessonRemark.blocks(Checkpoint.TEACHER, "imprint", Message.of("publishing.problem.imprint")));
    }

    /** Of no weight where nobody waits for letters. */
    static List<LessonRemark> mail(MailOutlook mail) {
        if (mail.readers() == 0) {
            return List.of();
        }
        var remarks = new ArrayList<LessonRemark>();
        if (!mail.leaves()) {
            remarks.add(mail(Message.of("publishing.remark.mail.none", mail.readers())));
        }
        if (mail.undelivered() > 0) {
            remarks.add(mail(Message.of("publishing.remark.mail.undelivered", mail.undelivered())));
        }
        return remarks;
    }

    private static LessonRemark mail(Message message) {
        return new LessonRemark(Checkpoint.MAIL, Weight.MENTIONS, "mail", message, LessonRemark.text(message));
    }

    static LessonRemark release(Difference difference) {
        var sentence = difference.sentence();
        return new LessonRemark(Checkpoint.RELEASE, Weight.MENTIONS, "release", sentence, LessonRemark.text(sentence));
    }
}
