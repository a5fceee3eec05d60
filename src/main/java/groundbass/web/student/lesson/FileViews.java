package groundbass.web.student.lesson;

import groundbass.document.BackingTrack;
import groundbass.lesson.PageContent;
import groundbass.release.FileRole;
import groundbass.release.PracticeTrack;
import groundbass.release.Release;
import groundbass.release.ReleaseFile;
import groundbass.text.Message;
import groundbass.text.Messages;
import groundbass.web.student.lesson.EpisodeView.FileView;
import groundbass.web.student.lesson.EpisodeView.TrackView;
import groundbass.web.view.Reader;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Names the files of one release in plain words. */
final class FileViews {

    private final Release release;
    private final PageContent content;
    private final List<BackingTrack> ownTracks;
    private final Ways ways;
    private final Reader reader;

    FileViews(Release release, PageContent content, List<BackingTrack> ownTracks, Ways ways, Reader reader) {
        this.release = release;
        this.content = content;
        this.ownTracks = ownTracks;
        this.ways = ways;
        this.reader = reader;
    }

    /** What can be played on the page. */
    List<TrackView> tracks(List<ReleaseFile> files) {
        return files.stream().filter(FileViews::isTrack).map(this::track).toList();
    }

    static boolean isTrack(ReleaseFile file) {
        return (file.role() == FileRole.PRACTICE && file.exercise().isEmpty()) || file.role() == FileRole.OWN_TRACK;
    }

    FileView file(ReleaseFile file) {
        String path = ways.file(release.id(), file.name());
        var open = Optional.of(path + "?open").filter(shown -> file.role() == FileRole.SHEET);
        return new FileView(path, name(file), kind(file.name()), reader.size(file.size()), open);
    }

    private TrackView track(ReleaseFile file) {
        String path = ways.play(release.id(), file.name());
        return PracticeTrack.of(file)
                .map(track -> new TrackView(
                        path, say("student.track." + track.sounding().word()), speed(track.percent())))
                .orElseGet(() -> new TrackView(path, own(file), ""));
    }

    private String speed(int percent) {
        int tempo = Math.round(content.lines().get(0).tempo() * percent / (float) PracticeTrack.WHOLE);
        return percent == PracticeTrack.WHOLE ? say("student.speed.full", tempo) : say("student.speed", percent, tempo);
    }

    private String name(ReleaseFile file) {
        return switch (file.role()) {
            case BUNDLE, ZIP -> say("student.file.bundle");
            case SHEET -> say("student.file.sheet");
            case READ_ME -> say("student.file.read_me");
            case MIDI, MUSICXML, PLAIN_TAB, BRAILLE, BRAILLE_TEXT, LINE_TEXT -> ofLine(file);
            case PRACTICE, LOSSLESS, ON_REQUEST -> practice(file);
            case OWN_TRACK -> own(file);
            case PICTURE, NOTE_PICTURE, PAGE, PLAY, STEM ->
                throw new IllegalArgumentException("offered to nobody: " + file.name());
        };
    }

    private String ofLine(ReleaseFile file) {
        var exercise = file.exercise();
        return exercise.isPresent()
                ? say("student.file.exercise." + file.form(), exercise.getAsInt())
                : say("student.file." + file.form());
    }

    private String practice(ReleaseFile file) {
        if (file.exercise().isPresent()) {
            return say("student.file.exercise.practice", file.exercise().getAsInt());
        }
        var track = track(file);
        return track.speed().isEmpty() ? track.name() : track.name() + ", " + track.speed();
    }

    private String own(ReleaseFile file) {
        return ownTracks.stream()
                .filter(track -> track.sha256().equals(file.sha256()))
                .findFirst()
                .map(track -> say("student.track.own", say(track.kind().messageKey()), track.title()))
                .orElseGet(() -> say("student.track.own", say("catalog.track.other"), file.name()));
    }

    private String kind(String name) {
        String ending = name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
        String key = "student.kind." + ending;
        return Messages.of(reader.locale()).has(key) ? say(key) : ending.toUpperCase(Locale.ROOT);
    }

    private String say(String key, Object... args) {
        return reader.say(Message.of(key, args));
    }
}
