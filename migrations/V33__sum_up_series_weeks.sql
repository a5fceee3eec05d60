-- What was taken of a series in each week that is over, so that a page about many lessons reads one row a week and not one for
-- each lesson. Portable: H2 and PostgreSQL run the same text.
create table taken_series_week (
    series_id   varchar(16) not null references series (id) on delete cascade,
    week        date        not null,
    students    bigint      not null, -- without those who have left
    complete    bigint      not null,
    broken_off  bigint      not null,
    handed_over bigint      not null,
    running     bigint      not null,
    primary key (series_id, week)
);

insert into taken_series_week (series_id, week, students, complete, broken_off, handed_over, running)
select episode.series_id, taken_week.week,
    coalesce((select sum(taken_cohort.students) from taken_cohort
        where taken_cohort.series_id = episode.series_id and taken_cohort.week = taken_week.week), 0),
    sum(taken_week.complete), sum(taken_week.broken_off), sum(taken_week.handed_over), sum(taken_week.running)
from taken_week join episode on episode.id = taken_week.episode_id
group by episode.series_id, taken_week.week;
