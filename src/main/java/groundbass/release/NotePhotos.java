package groundbass.release;

import groundbass.catalog.upload.Picture;
import groundbass.catalog.upload.Pictures;
import groundbass.lesson.NotePictures;
import groundbass.lesson.PageContent.PhotoContent;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** The educator's own pictures that the notes show, as files of a release and for its page. */
record NotePhotos(List<ReleaseFile> files, List<PhotoContent> shown) {
    static final NotePhotos NONE = new NotePhotos(List.of(), List.of());

    NotePhotos {
        files = List.copyOf(files);
        shown = List.copyOf(shown);
    }

    /**
     * Those that are there, numbered as the notes show them.
     *
     * @param asked when the release was asked for
     */
    static NotePhotos of(String notes, Pictures pictures, Instant asked) {
        var files = new ArrayList<ReleaseFile>();
        var shown = new ArrayList<PhotoContent>();
        for (var id : NotePictures.ids(notes)) {
            pictures.findAsOf(id, asked).ifPresent(picture -> {
                var file = file(files.size() + 1, picture);
                files.add(file);
                shown.add(new PhotoContent(NotePictures.address(id), file.name(), picture.wide(), picture.high()));
            });
        }
        return new NotePhotos(files, shown);
    }

    private static ReleaseFile file(int number, Picture picture) {
        var format = picture.format();
        String name = "notes-" + number + "." + format.extension();
        return ReleaseFile.of(name, FileRole.NOTE_PICTURE, format.mediaType(), picture.blob());
    }
}
