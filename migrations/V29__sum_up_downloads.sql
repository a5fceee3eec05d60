-- Sums of what was taken, so that no page reads all downloads to show some. They are written once a record cannot change any
-- more, and can be made again from the records at any time; what a student who left had part in stays counted, without the
-- student. Portable: H2 and PostgreSQL run the same text.

-- Of a download whose student has left: that it was by a student, and that it was the first that they took of its lesson.
alter table download add column departed boolean default false not null;
alter table download add column departed_first boolean default false not null;

-- Whether a student took something of a lesson before is asked of every record that is summed up.
create index download_of_student_in_lesson on download (student_id, episode_id, id);

-- Records that began before this instant are in taken_file and taken_hour; all others are read as they are.
create table summed_up (
    only_row integer not null primary key check (only_row = 1),
    before   timestamp with time zone not null
);
insert into summed_up (only_row, before) values (1, timestamp with time zone '1970-01-01 00:00:00+00:00');

-- "newcomers": students whose first download of the lesson this was; "nobody": downloads without a sign-in.
create table taken_file (
    episode_id  varchar(16)  not null,
    file_name   varchar(200) not null,
    complete    bigint not null,
    broken_off  bigint not null,
    handed_over bigint not null,
    running     bigint not null,
    nobody      bigint not null,
    newcomers   bigint not null,
    robots      bigint not null,
    primary key (episode_id, file_name)
);
create table taken_hour (
    episode_id  varchar(16) not null,
    age         integer     not null, -- whole hours since the lesson was brought out
    complete    bigint not null,
    broken_off  bigint not null,
    handed_over bigint not null,
    running     bigint not null,
    nobody      bigint not null,
    newcomers   bigint not null,
    robots      bigint not null,
    primary key (episode_id, age)
);

-- Weeks that are over, each from its Monday in the zone of the series. A series is summed up anew where its zone has changed.
create table taken_series (
    series_id varchar(16) not null primary key references series (id) on delete cascade,
    zone      varchar(60) not null,
    next_week date        not null -- the first that is not summed up yet
);
create table taken_week (
    episode_id  varchar(16) not null,
    week        date        not null,
    students    bigint not null,
    complete    bigint not null,
    broken_off  bigint not null,
    handed_over bigint not null,
    running     bigint not null,
    primary key (episode_id, week)
);
-- How many of the students who took their first thing of a series in one week took something in another.
create table taken_cohort (
    series_id varchar(16) not null references series (id) on delete cascade,
    joined    date        not null,
    week      date        not null,
    students  bigint      not null,
    primary key (series_id, joined, week)
);
-- When in the week of its readers' zone a series is used; Monday is 1 (ISO 8601).
create table taken_clock (
    series_id varchar(16) not null references series (id) on delete cascade,
    weekday   integer     not null,
    local_hour integer    not null,
    downloads bigint      not null,
    primary key (series_id, weekday, local_hour)
);
-- In which week a student took their first thing of a series, and in how many weeks that are over anything.
create table taking_student (
    series_id  varchar(16) not null references series (id) on delete cascade,
    student_id varchar(16) not null references student (id) on delete cascade,
    joined     date        not null,
    weeks      integer     not null,
    primary key (series_id, student_id)
);
create index taking_student_by_student on taking_student (student_id);

-- Students who have left, by lesson or series: no record tells any more in which weeks they took something.
create table taken_departed (
    subject  varchar(16) not null, -- a lesson or a series
    joined   date        not null,
    week     date        not null,
    students bigint      not null,
    primary key (subject, joined, week)
);
