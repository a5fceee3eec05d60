package groundbass.release;

import groundbass.catalog.upload.Upload;
import groundbass.catalog.upload.Uploads;
import groundbass.document.BackingTrack;
import groundbass.identity.Slug;
import groundbass.release.play.PlayManifest.MappedBar;
import groundbass.release.play.PlayManifest.OwnTrack;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** The educator's own recordings, as files of a release and for the page to play. */
record OwnRecordings(List<ReleaseFile> files, List<OwnTrack> played) {
    private static final Slug TRACK = new Slug("track");
    private static final double MILLISECONDS = 1000;

    OwnRecordings {
        files = List.copyOf(files);
        played = List.copyOf(played);
    }

    /**
     * Those whose upload is there.
     *
     * @param asked when the release was asked for
     */
    static OwnRecordings of(List<BackingTrack> tracks, Uploads uploads, Instant asked) {
        var files = new ArrayList<ReleaseFile>();
        var played = new ArrayList<OwnTrack>();
        for (var track : tracks) {
            uploads.findAsOf(track.upload(), asked).ifPresent(upload -> {
                var file = file(files.size() + 1, track, upload);
                files.add(file);
                played.add(played(file, track, upload));
            });
        }
        return new OwnRecordings(files, played);
    }

    private static ReleaseFile file(int number, BackingTrack track, Upload upload) {
        String ending = upload.facts().format().extension();
        String name = "own-" + number + "-" + Slug.of(track.title(), TRACK) + "." + ending;
        return ReleaseFile.of(name, FileRole.OWN_TRACK, upload.mediaType(), upload.blob());
    }

    private static OwnTrack played(ReleaseFile file, BackingTrack track, Upload upload) {
        double seconds = upload.facts().duration().toMillis() / MILLISECONDS;
        var bars = track.map().bars().stream()
                .map(bar -> new MappedBar(bar.bar(), bar.pass(), bar.round(), bar.seconds()))
                .toList();
        return new OwnTrack(
                file.name(),
                track.title(),
                track.kind().name(),
                seconds,
                bars,
                track.map().end());
    }
}
