package groundbass.web.student;

import groundbass.catalog.BackingTrack;
import groundbass.release.FileRole;
import groundbass.release.PageContent;
import groundbass.release.Release;
import groundbass.release.ReleaseFile;
import groundbass.text.Message;
import groundbass.text.Messages;
import groundbass.web.student.EpisodeView.FileView;
import groundbass.web.student.EpisodeView.TrackView;
import groundbass.web.view.Reader;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Names the files of one release in plain words. */
final class FileViews {
    /** How the release names its practice tracks: what sounds, and the percentage of the tempo. */
    private static final Pattern PRACTICE = Pattern.compile("(full|without-bass|bass)-([0-9]{1,3})\\.[a-z0-9]+");

    private static final Pattern EXERCISE = Pattern.compile("exercise-([0-9]{1,3})\\.[a-z0-9]+");
    private static final int WHOLE = 100;

    private final Release release;
    private final PageContent content;
    private final List<BackingTrack> ownTracks;
    private final Reader reader;

    FileViews(Release release, PageContent content, List<BackingTrack> ownTracks, Reader reader) {
        this.release = release;
        this.content = content;
        this.ownTracks = ownTracks;
        this.reader = reader;
    }

    /** What can be played on the page. */
    List<TrackView> tracks(List<ReleaseFile> files) {
        return files.stream().filter(FileViews::isTrack).map(this::track).toList();
    }

    static boolean isTrack(ReleaseFile file) {
        return file.role() == FileRole.PRACTICE || file.role() == FileRole.OWN_TRACK;
    }

    FileView file(ReleaseFile file) {
        String path = Paths.file(release.id(), file.name());
        return new FileView(path, name(file), kind(file.name()), reader.size(file.size()));
    }

    private TrackView track(ReleaseFile file) {
        String path = Paths.play(release.id(), file.name());
        var practice = PRACTICE.matcher(file.name());
        return practice.matches()
                ? new TrackView(path, say("student.track." + practice.group(1)), speed(practice))
                : new TrackView(path, own(file), "");
    }

    private String speed(Matcher practice) {
        int percent = Integer.parseInt(practice.group(2));
        int tempo = Math.round(content.lines().get(0).tempo() * percent / (float) WHOLE);
        return percent == WHOLE ? say("student.speed.full", tempo) : say("student.speed", percent, tempo);
    }

    private String name(ReleaseFile file) {
        return switch (file.role()) {
            case BUNDLE -> say("student.file.bundle");
            case SHEET -> say("student.file.sheet");
            case READ_ME -> say("student.file.read_me");
            case MIDI -> ofLine(file, "midi");
            case LINE_TEXT -> ofLine(file, "line_text");
            case PRACTICE -> practice(file);
            case OWN_TRACK -> own(file);
            case PICTURE, PAGE -> throw new IllegalArgumentException("offered to nobody: " + file.name());
        };
    }

    private String ofLine(ReleaseFile file, String form) {
        var exercise = EXERCISE.matcher(file.name());
        return exercise.matches()
                ? say("student.file.exercise." + form, Integer.valueOf(exercise.group(1)))
                : say("student.file." + form);
    }

    private String practice(ReleaseFile file) {
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
