package groundbass.web.program;

import groundbass.catalog.educator.ProgramScope;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;

/** Where a lesson stands. */
final class LessonOperations implements PageGroup {
    private final Door door;
    private final Addressed addressed;
    private final LessonView lessons;

    LessonOperations(Door door, Addressed addressed, LessonView lessons) {
        this.door = door;
        this.addressed = addressed;
        this.lessons = lessons;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(Door.ROOT + "/lessons/{lesson}", Role.EXEMPT, door.open(ProgramScope.READ, this::show));
    }

    private void show(Call call) {
        Answers.show(call, lessons.of(addressed.lesson(call)));
    }
}
