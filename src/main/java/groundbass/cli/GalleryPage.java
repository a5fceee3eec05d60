package groundbass.cli;

import groundbass.lesson.Gallery;
import java.util.List;

/** The gallery as one page. */
public record GalleryPage(String title, List<Gallery.Shown> examples) {
    public GalleryPage {
        examples = List.copyOf(examples);
    }
}
