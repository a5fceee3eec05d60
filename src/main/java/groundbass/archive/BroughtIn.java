package groundbass.archive;

import groundbass.archive.file.ArchiveRemark;
import groundbass.catalog.series.Series;
import java.util.List;

/**
 * What became of an archive or folder that was brought in.
 *
 * @param lessons how many lessons came in
 * @param already how many were here before, and were left as they are
 * @param damaged how many could not be brought in; {@code findings} says why
 */
public record BroughtIn(Series series, int lessons, int already, int damaged, List<ArchiveRemark> findings) {
    public BroughtIn {
        findings = List.copyOf(findings);
    }
}
