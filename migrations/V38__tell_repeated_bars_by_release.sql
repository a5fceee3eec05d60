-- A bar has another number where a correction put one before it, so what was repeated is told by release. What was counted
-- before belongs to the only release of a lesson that has one, and to an unknown one, 0, where it has more.
create table repeated_bar (
    episode_id     varchar(16) not null references episode (id) on delete cascade,
    release_number integer     not null,
    line           varchar(20) not null,
    bar            integer     not null,
    visitors       bigint      not null,
    primary key (episode_id, release_number, line, bar)
);

insert into repeated_bar (episode_id, release_number, line, bar, visitors)
select looped_bar.episode_id,
    coalesce((select case when count(*) = 1 then max(release.number) else 0 end from release
        where release.episode_id = looped_bar.episode_id and release.published_at is not null), 0),
    looped_bar.line, looped_bar.bar, looped_bar.visitors
from looped_bar;

drop table looped_bar;
