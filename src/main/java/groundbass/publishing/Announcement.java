package groundbass.publishing;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What is told of a lesson that is out: as a letter, or to be copied elsewhere.
 *
 * @param opening the first sentence
 * @param heading number and title
 * @param facts series and level
 * @param summary of the lesson; may be empty
 * @param link where it is, whatever becomes of its title
 * @param foot why somebody gets it, and how they end it; empty where it is no letter
 */
public record Announcement(
        Locale locale,
        String subject,
        String opening,
        String heading,
        String facts,
        String summary,
        String link,
        Optional<Foot> foot) {
    /**
     * The foot of a letter.
     *
     * @param endWords what following {@code endLink} does
     * @param sender who writes: name, address, what local law asks for
     */
    public record Foot(String reason, String endWords, String endLink, String sender) {}

    Announcement with(Foot under) {
        return new Announcement(locale, subject, opening, heading, facts, summary, link, Optional.of(under));
    }

    /** Paragraphs with an empty line between them; of RFC 3676 section 4.3 the line that parts off the foot. */
    public String plain() {
        var paragraphs = new ArrayList<>(List.of(opening, heading + "\n" + facts));
        Stream.of(summary, link).filter(text -> !text.isEmpty()).forEach(paragraphs::add);
        foot.map(under -> "-- \n" + under.reason() + "\n" + under.endWords() + " " + under.endLink() + "\n\n"
                        + under.sender())
                .ifPresent(paragraphs::add);
        return String.join("\n\n", paragraphs) + "\n";
    }

    /** A whole page, which loads nothing from anywhere. */
    public String html() {
        return AnnouncementHtml.page(this);
    }

    /** The same without what a page has around it, to be set into another. */
    public String fragment() {
        return AnnouncementHtml.fragment(this);
    }
}
