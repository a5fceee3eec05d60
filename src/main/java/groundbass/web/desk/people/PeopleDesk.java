package groundbass.web.desk.people;

import groundbass.audience.colleague.Invitations;
import groundbass.audience.colleague.Partings;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.series.Colleagues;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.EducatorSignIn;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Routes;
import groundbass.web.shell.limit.RateLimits;
import java.time.Clock;
import java.util.List;

/** All pages about who else is at the desk. */
public final class PeopleDesk implements PageGroup {
    private final List<PageGroup> groups;

    /** @param mailed whether letters leave this machine */
    public PeopleDesk(
            DeskContext desk,
            Educators educators,
            SeriesCatalog catalog,
            Colleagues colleagues,
            Invitations invitations,
            Partings partings,
            EducatorSignIn signIn,
            RateLimits limits,
            boolean mailed,
            Clock clock) {
        var sending = new Sending(desk, educators, invitations, limits, mailed);
        this.groups = List.of(
                new ColleaguePages(desk, educators, colleagues, invitations, partings, signIn, sending, clock),
                new PendingPages(desk, catalog, invitations, sending),
                new InvitationPages(desk, educators, invitations, signIn),
                new PeoplePages(desk, educators, invitations, partings, signIn, sending, clock));
    }

    @Override
    public void addTo(Routes routes) {
        groups.forEach(group -> group.addTo(routes));
    }
}
