package groundbass.web.desk.editor;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Episode;
import groundbass.form.FieldProblem;
import java.time.Instant;
import java.util.List;

/**
 * An episode whose text was just saved.
 *
 * @param form as typed, with the new version as its base
 * @param problems what could not be done beside saving the text
 */
record Saved(EducatorId who, Episode episode, EpisodeForm form, Instant at, List<FieldProblem> problems) {}
