#pragma once

#include <string>

#include "profile/acceptance.hpp"
#include "profile/airway.hpp"
#include "profile/alarms.hpp"
#include "profile/allergies.hpp"
#include "profile/baseline.hpp"
#include "profile/body.hpp"
#include "profile/care_tasks.hpp"
#include "profile/caregivers.hpp"
#include "profile/circuit.hpp"
#include "profile/communication.hpp"
#include "profile/consent.hpp"
#include "profile/contacts.hpp"
#include "profile/copies.hpp"
#include "profile/cough.hpp"
#include "profile/dependence.hpp"
#include "profile/device.hpp"
#include "profile/diagnosis.hpp"
#include "profile/directive.hpp"
#include "profile/emergency_equipment.hpp"
#include "profile/field.hpp"
#include "profile/home.hpp"
#include "profile/humidity.hpp"
#include "profile/interface.hpp"
#include "profile/medicines.hpp"
#include "profile/monitors.hpp"
#include "profile/orders.hpp"
#include "profile/oxygen.hpp"
#include "profile/person.hpp"
#include "profile/power.hpp"
#include "profile/prescription.hpp"
#include "profile/suction.hpp"
#include "profile/supplies.hpp"
#include "profile/utility_company.hpp"

namespace ventfolio {

/// Everything that is recorded about one home, in the order in which a profile is written.
struct Profile {
    // Defined in profile.cpp, so that a file that holds a profile does not compile all its fields.
    Profile();
    Profile(const Profile& other);
    Profile(Profile&& other) noexcept;
    Profile& operator=(const Profile& other);
    Profile& operator=(Profile&& other) noexcept;
    ~Profile();

    Field<std::string> record_number;
    Group<Orders> orders;
    Group<Person> person;
    Group<Diagnosis> diagnosis;
    Group<Dependence> dependence;
    Group<Airway> airway;
    List<Device> devices;
    Group<RemoteAlarm> remote_alarm;
    List<Prescription> prescriptions;
    Group<HumidityPlan> humidity_plan;
    Group<Oxygen> oxygen;
    Group<Suction> suction;
    Group<CoughDevice> cough_device;
    Group<AirwayClearance> airway_clearance;

    Group<Monitors> monitors;
    Group<Baseline> baseline;
    Group<Communication> communication;
    Group<Feeding> feeding;
    Group<Mobility> mobility;
    List<Implant> implants;
    Group<SpecialRisks> special_risks;
    Group<Allergies> allergies;
    List<Medicine> medicines;
    List<AvoidedMedicine> avoid_medicines;

    Group<EmergencyEquipment> emergency_equipment;
    Group<PowerSupply> power;
    List<Battery> batteries;
    List<Load> loads;
    Group<UtilityCompany> utility_company;
    Group<Contacts> contacts;
    List<EscalationStep> escalation;
    Group<Home> home;
    Group<Evacuation> evacuation;
    List<Caregiver> caregivers;
    Group<NightCover> night_cover;
    List<CareTask> care_tasks;
    List<Supply> supplies;
    List<GoBagItem> go_bag;
    Group<Directive> directive;
    Group<Consent> consent;
    List<Translation> translations;
    List<PaperCopy> copies;
    List<Acceptance> accepted;

    void describe(Visitor& visitor);

  private:
    void describe_person_in_care(Visitor& visitor);
    void describe_power_and_home(Visitor& visitor);
};

}  // namespace ventfolio
