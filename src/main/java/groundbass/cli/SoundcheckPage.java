package groundbass.cli;

import java.util.List;

/** The page of the soundcheck: one file that needs nothing but the sounds beside it. */
public record SoundcheckPage(String title, String lead, String caution, List<Section> sections) {
    public SoundcheckPage {
        sections = List.copyOf(sections);
    }

    /** One sound: what it is, what to listen for, and the file. */
    public record Example(String title, String listen, String file) {}

    /** Sounds of one kind. */
    public record Section(String title, List<Example> examples) {
        public Section {
            examples = List.copyOf(examples);
        }
    }
}
