package groundbass.web.desk.room;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Draft;
import groundbass.catalog.episode.Episode;

/** A room that was just saved. */
public record Kept(EducatorId who, Episode episode, Draft draft) {}
