package groundbass.publishing.preflight;

import groundbass.document.EpisodeDocument;
import groundbass.lesson.NoteLinks;
import groundbass.lesson.NoteLinks.NoteLink;
import groundbass.publishing.address.LinkAnswer;
import groundbass.publishing.address.LocalAddress;
import groundbass.publishing.preflight.LessonRemark.Weight;
import groundbass.text.Message;
import java.net.URI;
import java.net.URISyntaxException;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What is to be said of the addresses that a lesson points to: by their form, and where the site tries them by what was
 * answered. Video and courses have been read as secure addresses before; what else is wrong with them is said here.
 */
final class LinkRemarks {
    private LinkRemarks() {}

    static List<LessonRemark> of(EpisodeDocument document) {
        var facts = document.facts();
        var video = Stream.of(facts.video()).flatMap(address -> local("facts.video", address).stream());
        var courses = facts.courses().stream().flatMap(course -> local("facts.courses", course.address()).stream());
        var notes = NoteLinks.of(document.notes()).stream().flatMap(link -> inNotes(link).stream());
        return Stream.of(video, courses, notes).flatMap(remark -> remark).toList();
    }

    /** What was tried and is not there: told, and never in the way, for the net has its bad days. */
    static List<LessonRemark> tried(EpisodeDocument document, TriedLinks tried) {
        var facts = document.facts();
        var video = Stream.of(facts.video()).flatMap(address -> missing("facts.video", address, tried));
        var courses = facts.courses().stream().flatMap(course -> missing("facts.courses", course.address(), tried));
        var notes = notes(document).flatMap(address -> missing("notes", address, tried));
        return Stream.of(video, courses, notes).flatMap(remark -> remark).toList();
    }

    private static Stream<LessonRemark> missing(String field, String address, TriedLinks tried) {
        return tried.missing(address).stream()
                .map(message -> new LessonRemark(Checkpoint.LINKS, Weight.MENTIONS, field, message, address));
    }

    /** The addresses on the web, each once. */
    static List<String> addresses(EpisodeDocument document) {
        var facts = document.facts();
        var others =
                Stream.concat(Stream.of(facts.video()), facts.courses().stream().map(course -> course.address()));
        return Stream.concat(others, notes(document))
                .filter(address -> parsed(address).filter(LinkRemarks::isWeb).isPresent())
                .distinct()
                .toList();
    }

    private static Stream<String> notes(EpisodeDocument document) {
        return NoteLinks.of(document.notes()).stream()
                .filter(link -> !link.isOnThePage())
                .map(NoteLink::address);
    }

    /** How many were tried, and when the last of them was, or that they are being tried; empty where there are none. */
    static Optional<Message> looked(EpisodeDocument document, TriedLinks tried) {
        var addresses = addresses(document);
        var answers = addresses.stream()
                .flatMap(address -> tried.of(address).stream())
                .toList();
        if (answers.isEmpty() && !addresses.isEmpty()) {
            return Optional.of(Message.of("publishing.looked.links.trying", addresses.size()));
        }
        return answers.stream()
                .max(Comparator.comparing(LinkAnswer::at))
                .map(last -> Message.of(
                        "publishing.looked.links.tried",
                        answers.stream().filter(LinkAnswer::isTried).count(),
                        addresses.size(),
                        answers.stream().filter(LinkAnswer::isThere).count(),
                        tried.time(last)));
    }

    static int count(EpisodeDocument document) {
        int video = document.facts().video().isEmpty() ? 0 : 1;
        return video
                + document.facts().courses().size()
                + NoteLinks.of(document.notes()).size();
    }

    private static Optional<LessonRemark> local(String field, String address) {
        return parsed(address)
                .filter(LinkRemarks::isLocal)
                .map(uri -> asks(field, Message.of("publishing.remark.link.local", address), address));
    }

    private static Optional<LessonRemark> inNotes(NoteLink link) {
        if (link.isOnThePage()) {
            return Optional.empty();
        }
        String address = link.address();
        var uri = parsed(address);
        if (uri.isEmpty() || !leadsSomewhere(uri.get())) {
            var message = Message.of("publishing.remark.link.notes", link.line(), address);
            return Optional.of(asks("notes", message, address)); // and not its line: it may move
        }
        return uri.filter(LinkRemarks::isLocal)
                .map(local -> asks("notes", Message.of("publishing.remark.link.local", address), address));
    }

    private static boolean leadsSomewhere(URI uri) {
        return isWeb(uri) || "mailto".equalsIgnoreCase(uri.getScheme());
    }

    private static boolean isWeb(URI uri) {
        boolean web = "https".equalsIgnoreCase(uri.getScheme()) || "http".equalsIgnoreCase(uri.getScheme());
        return web && uri.getHost() != null;
    }

    private static boolean isLocal(URI uri) {
        return uri.getHost() != null && LocalAddress.is(uri.toString());
    }

    private static Optional<URI> parsed(String address) {
        try {
            return Optional.of(new URI(address));
        } catch (URISyntaxException e) {
            return Optional.empty();
        }
    }

    private static LessonRemark asks(String field, Message message, String address) {
        return new LessonRemark(Checkpoint.LINKS, Weight.ASKS, field, message, address);
    }
}
