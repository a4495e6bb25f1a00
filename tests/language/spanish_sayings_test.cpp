#include <doctest/doctest.h>

#include <string>

#include "packet/print_home_sheets.hpp"
#include "sheets/checks/passages.hpp"
#include "sheets/checks/phrases.hpp"

using namespace ventfolio;
using namespace ventfolio::testing;

namespace {

/// Whether a sentence says it, by the phrases of Spanish.
bool says(Saying saying, std::string_view words) {
    sheet_check::Passage passage;
    passage.text = words;
    passage.lines.emplace_back(0, 1);
    for (const sheet_check::Sentence& sentence : sheet_check::sentences_of(passage, {}))
        if (spanish_stationery().phrases.find(saying, sentence)) return true;
    return false;
}

}  // namespace

TEST_CASE("a dangerous saying is known in Spanish; one that forbids it or means another thing is not") {
    struct Row {
        Saying saying;
        const char* words;
        bool said;
    };
    // Common practice, no source: what must not stand on the paper is that of the English phrases.
    const Row rows[] = {
        {Saying::alarm_off, "Apague la alarma.", true},
        {Saying::alarm_off, "Deje la alarma en silencio.", true},
        {Saying::alarm_off, "Silencie la alarma y salga del cuarto.", true},
        {Saying::alarm_off, "Silencie la alarma desde la cocina.", true},
        {Saying::alarm_off, "No apague la alarma.", false},
        {Saying::alarm_off, "Nunca deje la alarma en silencio.", false},
        {Saying::alarm_off, "Silencie la alarma junto a la cama.", false},
        {Saying::alarm_off, "Apague el calentador.", false},
        {Saying::mouth_breaths, "Cubra el orificio.", true},
        {Saying::mouth_breaths, "¿No sube? Dele aire por boca y nariz.", true},
        {Saying::mouth_breaths, "Mascarilla sobre la boca.", true},
        {Saying::mouth_breaths, "Cierre suave boca y nariz.", true},
        {Saying::mouth_breaths, "No pasa aire por la boca.", false},
        {Saying::mouth_breaths, "No tape el orificio.", false},
        {Saying::mouth_breaths, "Dele aire por el cuello.", false},
        {Saying::mouth_breaths, "Limpie la boca.", false},
        {Saying::tube_back_in, "Cambie el tubo ya.", true},
        {Saying::tube_back_in, "META EL TUBO.", true},
        {Saying::tube_back_in, "Vuelva a meterlo.", true},
        {Saying::tube_back_in, "No meta un tubo.", false},
        {Saying::tube_back_in, "La clínica cambia el tubo.", false},
        {Saying::tube_back_in, "Deje el tubo puesto.", false},
        {Saying::fill_cuff, "Infle el globo.", true},
        {Saying::fill_cuff, "Desinfle el globo.", true},
        {Saying::change_inner_tube, "Saque la cánula interna.", true},
        {Saying::change_inner_tube, "Cánula interna fuera.", true},
        {Saying::suction_neck_tube, "Succione el tubo del cuello.", true},
        {Saying::suction_neck_tube, "Succione solo la boca.", false},
        {Saying::turn_on_oxygen, "Abra el tanque 1.", true},
        {Saying::turn_on_oxygen, "Abra el oxígeno.", true},
        {Saying::turn_on_oxygen, "Mire el nivel de oxígeno.", false},
        {Saying::uncover_port, "No tape el puerto.", true},
        {Saying::uncover_port, "Puerto de salida abierto.", true},
        {Saying::plug_small_lines, "Seque los tubitos.", true},
        {Saying::fit_exchanger, "Ponga la nariz artificial.", true},
        {Saying::fit_exchanger, "Nariz artificial fuera.", true},
        {Saying::start_second_ventilator, "Use la máquina de respaldo.", true},
        {Saying::start_second_ventilator, "Traiga el otro ventilador.", true},
        {Saying::start_second_ventilator, "No hay ventilador de respaldo.", false},
        {Saying::raise_oxygen, "Suba el oxígeno.", true},
        {Saying::raise_oxygen, "Dele más oxígeno.", true},
        {Saying::raise_oxygen, "Suba el oxígeno según la orden.", false},
        {Saying::raise_oxygen, "No suba el oxígeno.", false},
        {Saying::help_breathing, "Ponga la bolsa de respiración.", true},
        {Saying::help_breathing, "Ayude a toser.", true},
        {Saying::squeeze_interval, "Apriete despacio cada 4 segundos.", true},
        {Saying::rated_time, "8 horas según el fabricante.", true},
        {Saying::treatment_limit, "No le hagan RCP.", true},
        {Saying::treatment_limit, "No reanimar.", true},
        {Saying::treatment_limit, "Solo medidas de confort.", true},
        {Saying::treatment_limit, "¿No respira ni se mueve? Llame al 911. RCP como aprendió.", false},
        {Saying::treatment_limit, "Hay una orden firmada.", false},
        {Saying::treatment_limit, "No hay orden que ponga límites. Dé tratamiento completo.", false},
        {Saying::access_code, "Código de la puerta: 4711.", true},
        {Saying::access_code, "Caja de llaves 4711.", true},
        {Saying::access_code, "Llame al 555-0120.", false},
    };
    for (const Row& row : rows) {
        CAPTURE(std::string{row.words});
        CHECK(says(row.saying, row.words) == row.said);
    }
}
