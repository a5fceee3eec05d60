package groundbass.cli;

import java.nio.file.Path;

/** What files that are made of a file are called: its name without its ending. */
final class FileStem {
    private FileStem() {}

    static String of(Path file) {
        String name = file.getFileName().toString();
        int dot = name.lastIndexOf('.');
        return dot > 0 ? name.substring(0, dot) : name;
    }
}
