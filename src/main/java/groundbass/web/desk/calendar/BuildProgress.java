package groundbass.web.desk.calendar;

import groundbass.release.BuildState;

/** How far a build is, as a bar shows it. */
record BuildProgress(boolean running, int done, int total) {
    private static final BuildProgress NONE = new BuildProgress(false, 0, 0);

    static BuildProgress of(BuildState state) {
        if (state instanceof BuildState.Building building) {
            return new BuildProgress(true, building.done(), building.total());
        }
        return state instanceof BuildState.Waiting ? new BuildProgress(true, 0, 0) : NONE;
    }
}
