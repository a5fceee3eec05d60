package groundbass.archive.file;

import java.io.IOException;
import java.io.InputStream;
import java.util.Collections;
import java.util.SortedSet;
import java.util.TreeSet;

/** Files that lie together in a folder of a source, as they do where somebody zipped the folder and not what is in it. */
public final class Rooted implements ArchiveFiles {
    private final ArchiveFiles source;
    private final String root;
    private final SortedSet<String> names;

    private Rooted(ArchiveFiles source, String root) {
        this.source = source;
        this.root = root;
        var inside = new TreeSet<String>();
        source.names().stream()
                .filter(name -> name.startsWith(root))
                .forEach(name -> inside.add(name.substring(root.length())));
        this.names = Collections.unmodifiableSortedSet(inside);
    }

    /** The source itself, or its only folder with a series in it. */
    public static ArchiveFiles of(ArchiveFiles source) {
        var names = source.names();
        if (names.contains(ArchiveNames.SERIES)) {
            return source;
        }
        var roots = names.stream()
                .filter(name -> name.endsWith("/" + ArchiveNames.SERIES) && name.indexOf('/') == name.lastIndexOf('/'))
                .toList();
        return roots.size() == 1
                ? new Rooted(source, roots.get(0).substring(0, roots.get(0).length() - ArchiveNames.SERIES.length()))
                : source;
    }

    @Override
    public SortedSet<String> names() {
        return names;
    }

    @Override
    public InputStream open(String name) throws IOException {
        return source.open(root + name);
    }

    @Override
    public int passedOver() {
        return source.passedOver();
    }

    @Override
    public void close() throws IOException {
        source.close();
    }
}
