package groundbass.web.program;

import groundbass.catalog.educator.ProgramScope;
import groundbass.effort.Budget;
import groundbass.publishing.Publisher;
import groundbass.publishing.preflight.CheckedItem;
import groundbass.publishing.preflight.LessonRemark;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.Reader;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** What is to be said of the draft before its lesson goes out: what the desk's page of all items says, as data. */
final class PreflightOperations implements PageGroup {
    private final Door door;
    private final Addressed addressed;
    private final Publisher publisher;
    private final Budget budget;

    PreflightOperations(Door door, Addressed addressed, Publisher publisher, Budget budget) {
        this.door = door;
        this.addressed = addressed;
        this.publisher = publisher;
        this.budget = budget;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(Door.ROOT + "/lessons/{lesson}/preflight", Role.EXEMPT, door.open(ProgramScope.READ, this::show));
    }

    private void show(Call call) {
        var lesson = addressed.lesson(call);
        var look = publisher.look().at(call.who(), lesson);
        var checked = budget.spend(call.who().value(), look::checked);
        var reader = door.reader(call);
        var items = checked.items().stream().map(item -> view(item, reader)).toList();
        Answers.show(
                call,
                Members.of("clear", checked.holding().isEmpty())
                        .and("items", items)
                        .map());
    }

    private static Map<String, Object> view(CheckedItem item, Reader reader) {
        return Members.of("point", item.point().word())
                .and("title", reader.say(item.point().title()))
                .and("looked", reader.say(item.looked()))
                .and("state", item.state().word())
                .and(
                        "remarks",
                        item.remarks().stream()
                                .map(remark -> view(remark, item.holding(), reader))
                                .toList())
                .map();
    }

    /** What holds the lesson back can be let stand by its digest, where it only asks. */
    private static Map<String, Object> view(LessonRemark remark, List<LessonRemark> holding, Reader reader) {
        var members = Members.of("weight", remark.weight().name().toLowerCase(Locale.ROOT))
                .and("holds", holding.contains(remark))
                .and("member", MemberNames.of(remark.field()));
        if (remark.bar() > 0) {
            members.and("bar", remark.bar());
        }
        return members.and("detail", reader.say(remark.message()))
                .and("digest", remark.digest())
                .map();
    }
}
