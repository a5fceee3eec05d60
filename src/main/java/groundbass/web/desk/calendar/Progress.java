package groundbass.web.desk.calendar;

import groundbass.release.BuildState;

/** How far a build is, as a bar shows it. */
record Progress(boolean running, int done, int total) {
    private static final Progress NONE = new Progress(false, 0, 0);

    static Progress of(BuildState state) {
        if (state instanceof BuildState.Building building) {
            return new Progress(true, building.done(), building.total());
        }
        return state instanceof BuildState.Waiting ? new Progress(true, 0, 0) : NONE;
    }
}
