package groundbass.web.desk.recording;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.DraftSave;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.upload.Upload;
import groundbass.document.BackingTrack;
import groundbass.form.Outcome;
import java.util.ArrayList;

/** A recording that just came in, as the last track of its lesson. */
public record NewTrack(Upload upload, BackingTrack.Kind kind) {
    /** As the document keeps it, by the name of its file. */
    public BackingTrack track() {
        var named = TrackForm.of(upload, true);
        return new TrackForm(named.upload(), true, named.title(), kind)
                .track(upload)
                .orElseThrow();
    }

    /** @return refused where the lesson is gone */
    public Outcome<DraftSave> into(EpisodeService writing, EducatorId who, EpisodeId lesson) {
        return writing.saveDraft(who, lesson, (stored, changed) -> true, before -> {
            var tracks = new ArrayList<>(before.backingTracks());
            tracks.add(track());
            return before.edit().backingTracks(tracks).done();
        });
    }
}
