-- What a student has practised, where and how fast, and what they like; lessons are referred to by value, as downloads do.
-- And the code that can be typed in the place of a mailed link. Portable: H2 and PostgreSQL run the same text.
create table practised (
    student_id   varchar(16) not null references student (id) on delete cascade,
    episode_id   varchar(16) not null,
    line         varchar(20) not null, -- line, exercise-1
    practised_on date        not null, -- where the student was
    tempo        integer     not null, -- beats a minute: the fastest of that day
    from_place   varchar(12) not null, -- as the page's fields have them; empty for the whole line
    to_place     varchar(12) not null,
    primary key (student_id, episode_id, line)
);
create table favourite (
    student_id varchar(16) not null references student (id) on delete cascade,
    episode_id varchar(16) not null,
    chosen_at  timestamp with time zone not null,
    primary key (student_id, episode_id)
);

alter table sign_in add column code_hash varchar(64) default '' not null;
