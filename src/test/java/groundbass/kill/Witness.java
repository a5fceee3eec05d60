package groundbass.kill;

import groundbass.identity.Sha256;
import groundbass.store.Database;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jdbi.v3.core.Handle;

/** What a site holds after its process was killed, seen as the next start sees it. */
final class Witness {
    private final Map<Kind, Set<String>> kept;
    private final Map<String, Integer> drafts = new HashMap<>();

    private Witness(Map<Kind, Set<String>> kept) {
        this.kept = kept;
        kept.get(Kind.DRAFT).stream()
                .map(key -> new Acknowledged(Kind.DRAFT, key))
                .forEach(draft -> drafts.put(draft.episode(), draft.version()));
    }

    static Witness of(Site site) {
        try (Database database = site.open()) {
            return database.jdbi().withHandle(handle -> new Witness(kept(site, handle)));
        }
    }

    private static Map<Kind, Set<String>> kept(Site site, Handle handle) {
        var kept = new EnumMap<Kind, Set<String>>(Kind.class);
        for (Kind kind : Kind.values()) {
            kept.put(kind, kind.keys(handle));
        }
        kept.get(Kind.UPLOAD).removeAll(withoutFile(site, handle));
        return kept;
    }

    /** Uploads whose file is missing or is not what its digest says. */
    private static Set<String> withoutFile(Site site, Handle handle) {
        var missing = new HashSet<String>();
        handle.createQuery("select id, sha256 from upload")
                .map((row, context) -> Map.entry(row.getString("id"), row.getString("sha256")))
                .forEach(upload -> {
                    if (!isWhole(site.files(), upload.getValue())) {
                        missing.add(upload.getKey());
                    }
                });
        return missing;
    }

    private static boolean isWhole(Path files, String sha256) {
        Path file = files.resolve(sha256.substring(0, 2)).resolve(sha256);
        try {
            return Files.exists(file)
                    && Sha256.of(Files.readAllBytes(file)).hex().equals(sha256);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    List<Acknowledged> lost(List<Acknowledged> acknowledged) {
        return acknowledged.stream().filter(one -> !isKept(one)).toList();
    }

    private boolean isKept(Acknowledged one) {
        return one.kind() == Kind.DRAFT
                ? drafts.getOrDefault(one.episode(), 0) >= one.version()
                : kept.get(one.kind()).contains(one.key());
    }
}
